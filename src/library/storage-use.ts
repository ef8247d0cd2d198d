import { CompiledQuery, sql } from 'kysely';
import type { LibraryDb } from './library.ts';

export interface StorageUse {
  readonly takes: number;
  /** Recordings, each counted once however many takes share it. */
  readonly recordings: number;
  readonly audioBytes: number;
  /** The tables: results, sheets, remarks and all else. */
  readonly tableBytes: number;
}

/** What a library takes up. */
export async function storageUse(db: LibraryDb): Promise<StorageUse> {
  const { takes } = await db
    .selectFrom('take')
    .select(({ fn }) => fn.countAll<number>().as('takes'))
    .executeTakeFirstOrThrow();
  const { recordings, audioBytes } = await db
    .selectFrom('audio')
    .select(({ fn }) => [
      fn.countAll<number>().as('recordings'),
      fn.coalesce(fn.sum<number>('bytes'), sql.lit(0)).as('audioBytes'),
    ])
    .executeTakeFirstOrThrow();
  const pages = await pragma(db, 'page_count');
  const pageBytes = await pragma(db, 'page_size');
  return { takes, recordings, audioBytes, tableBytes: pages * pageBytes };
}

async function pragma(db: LibraryDb, name: string): Promise<number> {
  const { rows } = await db.executeQuery(CompiledQuery.raw(`pragma ${name}`));
  return Number(Object.values(rows[0] as object)[0]);
}
