import type { Database } from '@sqlite.org/sqlite-wasm';
import { LibraryFault } from '../../library/library-fault.ts';
import type { SqlDatabase } from '../../library/sqlite-dialect.ts';

/** Result codes of SQLite (https://sqlite.org/rescode.html). */
const full = 13;
const writeFailed = 778;

/** SQLite in WebAssembly as the library's dialect wants it. */
export function wasmSqliteDatabase(database: Database): SqlDatabase {
  return {
    execute(sql, parameters) {
      try {
        if (/^pragma /i.test(sql)) return { rows: everyStep(database, sql), changes: 0 };
        const rows = database.exec({
          sql,
          ...(parameters.length === 0 ? {} : { bind: parameters as never }),
          rowMode: 'object',
          returnValue: 'resultRows',
        });
        return { rows, changes: Number(database.changes()) };
      } catch (error) {
        const code = (error as { resultCode?: number }).resultCode ?? 0;
        // The browser's files refuse a write for one reason only: no room.
        if (code === full || code === writeFailed) throw new LibraryFault('no-room');
        throw error;
      }
    },
    close: () => database.close(),
  };
}

/** A pragma may take many steps without giving rows, of which `exec` would take the first. */
function everyStep(database: Database, sql: string): unknown[] {
  const statement = database.prepare(sql);
  try {
    const rows: unknown[] = [];
    while (statement.step()) if (statement.columnCount > 0) rows.push(statement.get({}));
    return rows;
  } finally {
    statement.finalize();
  }
}
