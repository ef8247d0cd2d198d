import { CompiledQuery, type Kysely } from 'kysely';
import { LibraryFault } from './library-fault.ts';
import type { LibrarySchema } from './library-schema.ts';
import { migrations as allMigrations } from './migrations/index.ts';
import type { Migration } from './migrations/migration.ts';

/**
 * Brings a library's schema up to date, each step whole or not at all; the version stands in SQLite's `user_version`.
 * Two programs that open an old library at once take turns. A library of a newer program is left alone:
 * `LibraryFault` `library-is-newer`.
 *
 * @returns how many steps were taken
 * @example await migrateLibrary(db) // 1 for an empty file, 0 the next time
 */
export async function migrateLibrary(
  db: Kysely<LibrarySchema>,
  migrations: readonly Migration[] = allMigrations,
): Promise<number> {
  const known = migrations.length;
  const version = await schemaVersion(db);
  if (version > known) throw new LibraryFault('library-is-newer', { version, known });
  let steps = 0;
  for (let step = version; step < known; step++) {
    await db.transaction().execute(async (transaction) => {
      if ((await schemaVersion(transaction)) !== step) return; // another program was first
      for (const statement of migrations[step]!.statements) {
        await transaction.executeQuery(CompiledQuery.raw(statement));
      }
      await transaction.executeQuery(CompiledQuery.raw(`pragma user_version = ${step + 1}`));
      steps++;
    });
  }
  return steps;
}

async function schemaVersion(db: Kysely<LibrarySchema>): Promise<number> {
  const { rows } = await db.executeQuery(CompiledQuery.raw('pragma user_version'));
  return (rows[0] as { user_version: number }).user_version;
}
