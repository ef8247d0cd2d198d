import { accessSync, constants, existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { Kysely } from 'kysely';
import type { AudioStore } from './audio-store.ts';
import { betterSqliteDatabase } from './better-sqlite-database.ts';
import { folderAudioStore } from './folder-audio-store.ts';
import type { Library, LibraryDb } from './library.ts';
import { LibraryFault } from './library-fault.ts';
import { libraryFaultOf } from './library-fault-of.ts';
import { loadSqlite } from './load-sqlite.ts';
import { migrateLibrary } from './migrate-library.ts';
import { sqliteDialect } from './sqlite-dialect.ts';
import { tablesCopy } from './tables-copy.ts';

/** A library in a folder; `close` when done with it. */
export interface FolderLibrary extends Library {
  readonly folder: string;
  close(): Promise<void>;
}

const busyTimeoutMs = 10_000;

/**
 * Opens the library of a folder, which is made when it isn't there: `takes.sqlite` and the recordings under `audio`.
 * What SQLite has acknowledged is on the disk (WAL with `synchronous = full`). Where nothing may be written, it is a
 * library to read: what would change it is refused with `library-read-only`. Throws `LibraryFault`: `no-sqlite`
 * where better-sqlite3 can't be loaded, `not-a-library`, `library-is-newer`, `library-busy`, `library-damaged`,
 * `no-room`, `disk-failed`.
 *
 * @example
 * const library = await openFolderLibrary('my-takes');
 * await listTakes(library.db);
 * await library.close();
 */
export async function openFolderLibrary(folder: string): Promise<FolderLibrary> {
  await loadSqlite();
  const path = join(folder, 'takes.sqlite');
  try {
    try {
      makeFolder(folder);
      return await openToWrite(folder, path);
    } catch (error) {
      if (!mayOnlyBeRead(error, folder)) throw error;
      if (!existsSync(path)) throw new LibraryFault('library-read-only', { path: folder });
      return await openToRead(folder, path);
    }
  } catch (error) {
    const fault = libraryFaultOf(error, folder);
    if (fault instanceof LibraryFault) throw fault;
    throw new LibraryFault('not-a-library', { path, reason: (error as Error).message });
  }
}

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    // Node's words for a new folder on a disk that may only be read.
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    throw new LibraryFault('library-read-only', { path: folder });
  }
}

async function openToWrite(folder: string, path: string): Promise<FolderLibrary> {
  const { database, db } = await openTables(path, folder);
  const close = async () => {
    try {
      database.pragma('optimize');
    } catch {
      // A full disk, a damaged page: all that was kept is kept without it.
    }
    database.close();
  };
  return { db, audio: folderAudioStore(join(folder, 'audio')), folder, close };
}

/** A copy is brought up to date, then read; what is written into it would be lost, so nothing may be. */
async function openToRead(folder: string, path: string): Promise<FolderLibrary> {
  const copy = tablesCopy(path);
  try {
    (await openTables(copy.path, folder)).database.close();
    const Database = await loadSqlite();
    const database = new Database(copy.path, { readonly: true });
    const close = async () => {
      database.close();
      copy.remove();
    };
    return { db: tablesOf(database, folder), audio: storeToRead(folder), folder, close };
  } catch (error) {
    copy.remove();
    throw error;
  }
}

function storeToRead(folder: string): AudioStore {
  const store = folderAudioStore(join(folder, 'audio'));
  const refuse = async () => {
    throw new LibraryFault('library-read-only', { path: folder });
  };
  const put = async (hash: string) => ((await store.has(hash)) ? undefined : refuse());
  return { ...store, put, delete: refuse };
}

async function openTables(path: string, folder: string) {
  const Database = await loadSqlite();
  const database = new Database(path, { timeout: busyTimeoutMs });
  try {
    database.pragma('auto_vacuum = incremental'); // before the first table, or it has no effect
    database.pragma('journal_mode = wal');
    database.pragma('synchronous = full');
    database.pragma('foreign_keys = on');
    database.pragma('secure_delete = on');
    const db = tablesOf(database, folder);
    await migrateLibrary(db);
    return { database, db };
  } catch (error) {
    database.close();
    throw error;
  }
}

const tablesOf = (database: Database, folder: string): LibraryDb =>
  new Kysely({ dialect: sqliteDialect(betterSqliteDatabase(database, folder)) });

/** SQLite doesn't always say that it was a right that it lacked. */
function mayOnlyBeRead(error: unknown, folder: string): boolean {
  const fault = libraryFaultOf(error, folder);
  if (fault instanceof LibraryFault) return fault.code === 'library-read-only';
  if (!String((error as { code?: string }).code).startsWith('SQLITE_CANTOPEN')) return false;
  try {
    accessSync(folder, constants.W_OK);
    return false;
  } catch {
    return true;
  }
}
