import { existsSync } from 'node:fs';
import { rename } from 'node:fs/promises';
import { dirname } from 'node:path';
import type { Database as SqliteDatabase } from 'better-sqlite3';
import { CompiledQuery } from 'kysely';
import type { Library } from '../library.ts';
import { LibraryFault } from '../library-fault.ts';
import { libraryFaultOf } from '../library-fault-of.ts';
import { loadSqlite } from '../load-sqlite.ts';
import { migrations } from '../migrations/index.ts';
import { unpackedJson } from '../stored-result.ts';
import { type TablesCopy, tablesCopy } from '../tables-copy.ts';
import { syncFile, syncFolder } from '../written-for-good.ts';

export interface KeptRecording {
  readonly hash: string;
  readonly bytes: number;
  /** The recording's own file name: untrusted text. */
  readonly name: string;
}

/** Tables of a library that lie in a file nobody works with; `close` when done. */
export interface KeptTables {
  readonly recordings: readonly KeptRecording[];
  readonly takes: number;
  /** Puts them in the place of all tables at `path`: in one transaction there, whatever ends the program meanwhile. */
  replace(path: string): Promise<void>;
  /** The first take whose result can't be unpacked, or null. */
  damagedResult(): string | null;
  close(): void;
}

/** Writes the tables as they are at this moment to a new file, while others may go on writing (SQLite: VACUUM INTO). */
export async function snapshotTables({ db }: Library, path: string): Promise<void> {
  const folder = dirname(path);
  try {
    await db.executeQuery(CompiledQuery.raw('vacuum into ?', [path]));
  } catch (error) {
    // It is the folder written to that is full or closed, not the library's.
    if (error instanceof LibraryFault && error.code === 'no-room')
      throw new LibraryFault('no-room', { path: folder });
    if (isCannotOpen(error)) throw new LibraryFault('library-read-only', { path: folder });
    throw error;
  }
  await syncFile(path);
}

const isCannotOpen = (error: unknown): boolean =>
  (error as { code?: string }).code?.startsWith('SQLITE_CANTOPEN') === true;

/**
 * Opens tables that came from somewhere and checks them before anything is made of them: SQLite's own checks, and that
 * they are exactly those that this program makes, so that no foreign view or trigger comes in with them. Throws
 * `LibraryFault` `backup-damaged` or `library-is-newer`. The file isn't changed.
 */
export async function openKeptTables(path: string): Promise<KeptTables> {
  let database: SqliteDatabase | undefined;
  let copy: TablesCopy | undefined;
  const close = () => {
    database?.close();
    copy?.remove();
  };
  try {
    const Database = await loadSqlite();
    database = new Database(path, { readonly: true, fileMustExist: true });
    try {
      database.pragma('trusted_schema = off');
      database.pragma('user_version');
    } catch (error) {
      if (!isCannotOpen(error)) throw error;
      // A backup that somebody looked into, on a disk that may not be written.
      database.close();
      copy = tablesCopy(path);
      database = new Database(copy.path, { readonly: true });
      database.pragma('trusted_schema = off');
    }
    checkTables(database, new Database(':memory:'));
    const tables = database;
    return {
      recordings: tables
        .prepare<[], KeptRecording>('select hash, bytes, name from audio order by hash')
        .all(),
      takes: tables.prepare<[], number>('select count(*) from take').pluck().get()!,
      async replace(to) {
        try {
          await tables.backup(to, { progress: () => 0x7fffffff });
        } catch (error) {
          const fault = libraryFaultOf(error, dirname(to));
          if (fault instanceof LibraryFault && fault.code !== 'library-busy') throw fault;
          throw new LibraryFault('library-in-use', { path: to });
        }
      },
      damagedResult() {
        const results = tables.prepare<[], { takeId: string; json: Uint8Array }>(
          'select takeId, json from takeResult',
        );
        for (const { takeId, json } of results.iterate()) if (!isUnpacked(json)) return takeId;
        return null;
      },
      close,
    };
  } catch (error) {
    close();
    if (error instanceof LibraryFault) throw error;
    throw new LibraryFault('backup-damaged', { path, reason: (error as Error).message });
  }
}

/** SQLite notices no damage inside a value; that of the packing and of the JSON in it shows. */
function isUnpacked(json: Uint8Array): boolean {
  try {
    unpackedJson(json);
    return true;
  } catch {
    return false;
  }
}

/** What of a schema counts: all but the tables that SQLite's own "optimize" makes. */
const schemaOf = (database: SqliteDatabase) =>
  JSON.stringify(
    database
      .prepare(
        "select type, name, tbl_name, sql from sqlite_schema where not (type = 'table' and name in ('sqlite_stat1', 'sqlite_stat4')) order by type, name",
      )
      .all(),
  );

function checkTables(database: SqliteDatabase, own: SqliteDatabase): void {
  try {
    const version = database.pragma('user_version', { simple: true }) as number;
    if (version > migrations.length)
      throw new LibraryFault('library-is-newer', { version, known: migrations.length });
    for (const { statements } of migrations.slice(0, version))
      for (const statement of statements) own.exec(statement);
    if (version < 1 || schemaOf(database) !== schemaOf(own))
      throw new Error('they are not the tables of a library');
    const found = database.pragma('integrity_check(1)', { simple: true });
    if (found !== 'ok') throw new Error(String(found));
    if ((database.pragma('foreign_key_check') as unknown[]).length > 0)
      throw new Error('rows name others that are not there');
  } finally {
    own.close();
  }
}

/** Renames a snapshot over the tables of a backup, which nobody may have open: what stands beside them in a log would be lost. */
export async function putTables(snapshot: string, tables: string): Promise<void> {
  const Database = await loadSqlite();
  try {
    if (!existsSync(tables)) return await settle();
    const before = new Database(tables, { timeout: 1000 });
    try {
      before.pragma('journal_mode = delete'); // takes in and removes a log that stands beside it
    } finally {
      before.close();
    }
  } catch (error) {
    if ((error as { code?: string }).code?.startsWith('SQLITE_BUSY'))
      throw new LibraryFault('library-in-use', { path: dirname(tables) });
    throw error;
  }
  await settle();

  async function settle() {
    await rename(snapshot, tables);
    await syncFolder(dirname(tables));
  }
}
