import type { Database } from 'better-sqlite3';
import { libraryFaultOf } from './library-fault-of.ts';
import type { SqlDatabase } from './sqlite-dialect.ts';

/** better-sqlite3 as the library's dialect wants it; what goes wrong with its file at `path` becomes a `LibraryFault`. */
export function betterSqliteDatabase(database: Database, path: string): SqlDatabase {
  return {
    execute(sql, parameters) {
      try {
        // A pragma may take many steps without giving rows, which `run` wouldn't take.
        if (/^pragma /i.test(sql)) return { rows: database.pragma(sql.slice(7)) as unknown[], changes: 0 };
        const statement = database.prepare(sql);
        if (statement.reader) return { rows: statement.all(...parameters), changes: 0 };
        return { rows: [], changes: statement.run(...parameters).changes };
      } catch (error) {
        throw libraryFaultOf(error, path);
      }
    },
    close: () => database.close(),
  };
}
