import {
  CompiledQuery,
  type DatabaseConnection,
  type Dialect,
  type Driver,
  type QueryResult,
  SqliteAdapter,
  SqliteIntrospector,
  SqliteQueryCompiler,
} from 'kysely';

/** What a home's SQLite must be able to do; both homes' libraries work synchronously. */
export interface SqlDatabase {
  /** Runs one statement; `rows` is empty unless it gives some back. */
  execute(
    sql: string,
    parameters: readonly unknown[],
  ): { readonly rows: unknown[]; readonly changes: number };
  close(): void;
}

/**
 * The Kysely dialect that all homes of the library share: one connection, taken in turn; transactions take the write
 * lock at once, since one that reads first and writes later could be refused when another process wrote meanwhile.
 *
 * @example new Kysely<LibrarySchema>({ dialect: sqliteDialect(database) })
 */
export function sqliteDialect(database: SqlDatabase): Dialect {
  return {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => driver(database),
    createIntrospector: (db) => new SqliteIntrospector(db),
    createQueryCompiler: () => new SqliteQueryCompiler(),
  };
}

function driver(database: SqlDatabase): Driver {
  const connection: DatabaseConnection = {
    async executeQuery<R>({ sql, parameters }: CompiledQuery): Promise<QueryResult<R>> {
      const { rows, changes } = database.execute(sql, parameters);
      return { rows: rows as R[], numAffectedRows: BigInt(changes) };
    },
    // biome-ignore lint/correctness/useYield: nothing here is long enough to be streamed
    async *streamQuery() {
      throw new Error('Queries of the library are paged, not streamed.');
    },
  };
  let turn = Promise.resolve();
  let finish = () => {};
  const say = (statement: string) => connection.executeQuery(CompiledQuery.raw(statement));
  return {
    async init() {},
    async acquireConnection() {
      const before = turn;
      let done = () => {};
      turn = new Promise((resolve) => {
        done = resolve;
      });
      await before;
      finish = done;
      return connection;
    },
    async releaseConnection() {
      finish();
    },
    async beginTransaction() {
      await say('begin immediate');
    },
    async commitTransaction() {
      await say('commit');
    },
    async rollbackTransaction() {
      // A full disk or a damaged page ends the transaction by itself. What led here counts, not that there is nothing left.
      await say('rollback').catch(() => {});
    },
    async destroy() {
      database.close();
    },
  };
}
