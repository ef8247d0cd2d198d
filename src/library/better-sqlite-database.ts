import type { Database } from 'better-sqlite3';
import { LibraryFault } from './library-fault.ts';
import type { SqlDatabase } from './sqlite-dialect.ts';

/** better-sqlite3 as the library's dialect wants it; a locked or full database becomes a `LibraryFault`. */
export function betterSqliteDatabase(database: Database): SqlDatabase {
  return {
    execute(sql, parameters) {
      try {
        // A pragma may take many steps without giving rows, which `run` wouldn't take.
        if (/^pragma /i.test(sql)) return { rows: database.pragma(sql.slice(7)) as unknown[], changes: 0 };
        const statement = database.prepare(sql);
        if (statement.reader) return { rows: statement.all(...parameters), changes: 0 };
        return { rows: [], changes: statement.run(...parameters).changes };
      } catch (error) {
        throw faultOf(error);
      }
    },
    close: () => database.close(),
  };
}

function faultOf(error: unknown): unknown {
  const code = (error as { code?: string }).code ?? '';
  if (code.startsWith('SQLITE_BUSY')) return new LibraryFault('library-busy');
  if (code.startsWith('SQLITE_FULL')) return new LibraryFault('no-room');
  return error;
}
