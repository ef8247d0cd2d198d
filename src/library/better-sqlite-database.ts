import type { Database, Statement } from 'better-sqlite3';
import { libraryFaultOf } from './library-fault-of.ts';
import type { SqlDatabase } from './sqlite-dialect.ts';

/** A view asks the same few dozen questions again and again, of each player; preparing one takes as long as a short answer. */
const mostKept = 200;

/** better-sqlite3 as the library's dialect wants it; what goes wrong with its file at `path` becomes a `LibraryFault`. */
export function betterSqliteDatabase(database: Database, path: string): SqlDatabase {
  const kept = new Map<string, Statement<unknown[]>>();
  const prepared = (sql: string): Statement<unknown[]> => {
    const known = kept.get(sql);
    if (known !== undefined) return known;
    const statement = database.prepare<unknown[]>(sql);
    if (kept.size === mostKept) kept.delete(kept.keys().next().value!);
    kept.set(sql, statement);
    return statement;
  };
  return {
    execute(sql, parameters) {
      try {
        // A pragma may take many steps without giving rows, which `run` wouldn't take.
        if (/^pragma /i.test(sql)) return { rows: database.pragma(sql.slice(7)) as unknown[], changes: 0 };
        const statement = prepared(sql);
        if (statement.reader) return { rows: statement.all(...parameters), changes: 0 };
        return { rows: [], changes: statement.run(...parameters).changes };
      } catch (error) {
        throw libraryFaultOf(error, path);
      }
    },
    close: () => database.close(),
  };
}
