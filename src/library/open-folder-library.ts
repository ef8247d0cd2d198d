import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { Kysely } from 'kysely';
import { betterSqliteDatabase } from './better-sqlite-database.ts';
import { folderAudioStore } from './folder-audio-store.ts';
import type { Library } from './library.ts';
import { LibraryFault } from './library-fault.ts';
import type { LibrarySchema } from './library-schema.ts';
import { loadSqlite } from './load-sqlite.ts';
import { migrateLibrary } from './migrate-library.ts';
import { sqliteDialect } from './sqlite-dialect.ts';

/** A library in a folder; `close` when done with it. */
export interface FolderLibrary extends Library {
  readonly folder: string;
  close(): Promise<void>;
}

const busyTimeoutMs = 10_000;

/**
 * Opens the library of a folder, which is made when it isn't there: `takes.sqlite` and the recordings under `audio`.
 * What SQLite has acknowledged is on the disk (WAL with `synchronous = full`). Throws `LibraryFault`: `no-sqlite`
 * where better-sqlite3 can't be loaded, `not-a-library`, `library-is-newer`, `library-busy`.
 *
 * @example
 * const library = await openFolderLibrary('my-takes');
 * await listTakes(library.db);
 * await library.close();
 */
export async function openFolderLibrary(folder: string): Promise<FolderLibrary> {
  const Database = await loadSqlite();
  const path = join(folder, 'takes.sqlite');
  try {
    mkdirSync(folder, { recursive: true });
    const database = new Database(path, { timeout: busyTimeoutMs });
    try {
      database.pragma('auto_vacuum = incremental'); // before the first table, or it has no effect
      database.pragma('journal_mode = wal');
      database.pragma('synchronous = full');
      database.pragma('foreign_keys = on');
      database.pragma('secure_delete = on');
      const db = new Kysely<LibrarySchema>({ dialect: sqliteDialect(betterSqliteDatabase(database)) });
      await migrateLibrary(db);
      const close = async () => {
        database.pragma('optimize');
        database.close();
      };
      return { db, audio: await folderAudioStore(join(folder, 'audio')), folder, close };
    } catch (error) {
      database.close();
      throw error;
    }
  } catch (error) {
    if (error instanceof LibraryFault) throw error;
    throw new LibraryFault('not-a-library', { path, reason: (error as Error).message });
  }
}
