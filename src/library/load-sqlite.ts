import type { default as BetterSqlite } from 'better-sqlite3';
import { LibraryFault } from './library-fault.ts';

/** better-sqlite3, or `LibraryFault` `no-sqlite` where it can't be loaded. */
export async function loadSqlite(): Promise<typeof BetterSqlite> {
  try {
    const { default: Database } = await import('better-sqlite3');
    new Database(':memory:').close(); // the native part is loaded here, not by the import
    return Database;
  } catch (error) {
    throw new LibraryFault('no-sqlite', { reason: (error as Error).message.split('\n')[0]! });
  }
}
