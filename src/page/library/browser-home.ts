import sqlite3InitModule, { type SAHPoolUtil } from '@sqlite.org/sqlite-wasm';
import { Kysely } from 'kysely';
import type { AudioStore } from '../../library/audio-store.ts';
import { clearUnreferencedAudio } from '../../library/delete-audio.ts';
import type { Library } from '../../library/library.ts';
import { LibraryFault } from '../../library/library-fault.ts';
import type { LibrarySchema } from '../../library/library-schema.ts';
import { migrateLibrary } from '../../library/migrate-library.ts';
import { sqliteDialect } from '../../library/sqlite-dialect.ts';
import { opfsAudioStore } from './opfs-audio-store.ts';
import { wasmSqliteDatabase } from './wasm-sqlite-database.ts';

/** The library in the browser's private files, for the one tab whose turn it is. */
interface BrowserHome {
  /** Opens the library; only while no other tab has it. */
  open(): Promise<Library>;
  /** Closes it, so that another tab can open it. */
  close(): Promise<void>;
}

/** What can't be had in a private window of some browsers, or in an old one. */
async function privateFiles(): Promise<void> {
  try {
    await navigator.storage.getDirectory();
    if (typeof FileSystemFileHandle.prototype.createSyncAccessHandle !== 'function') throw new Error();
  } catch {
    throw new LibraryFault('no-private-files');
  }
}

/**
 * The home of a page's library: SQLite in WebAssembly over a pool of files that it keeps open, which only one tab can
 * do at a time, and recordings beside it.
 */
export function browserHome(): BrowserHome {
  let pool: SAHPoolUtil | undefined;
  let audio: AudioStore | undefined;
  let db: Kysely<LibrarySchema> | undefined;
  let cleared = false;

  async function openPool(): Promise<SAHPoolUtil> {
    if (pool !== undefined) return pool.unpauseVfs();
    await privateFiles();
    const sqlite = await sqlite3InitModule();
    pool = await sqlite.installOpfsSAHPoolVfs({
      name: 'evenhand-takes',
      directory: '.evenhand-takes',
      initialCapacity: 6,
      // Whatever keeps the files from being opened, what they hold is never thrown away for it.
      preserveOnInitFailure: true,
    });
    return pool;
  }

  return {
    async open() {
      const { OpfsSAHPoolDb } = await openPool();
      const database = new OpfsSAHPoolDb('/takes.sqlite');
      try {
        for (const pragma of [
          'auto_vacuum = incremental', // before the first table, or it has no effect
          'journal_mode = truncate',
          'synchronous = full',
          'foreign_keys = on',
          'secure_delete = on',
          'temp_store = memory',
        ])
          database.exec(`pragma ${pragma}`);
        db = new Kysely<LibrarySchema>({ dialect: sqliteDialect(wasmSqliteDatabase(database)) });
        await migrateLibrary(db);
        audio ??= await opfsAudioStore();
        const library = { db, audio };
        if (!cleared) await clearUnreferencedAudio(library);
        cleared = true;
        return library;
      } catch (error) {
        await this.close();
        database.close();
        throw error;
      }
    },
    async close() {
      await db?.destroy();
      db = undefined;
      pool?.pauseVfs();
    },
  };
}
