import { sql } from 'kysely';
import type { LibraryDb } from './library.ts';
import { type ListedTake, listedTakes } from './listed-takes.ts';
import { filteredTakes, leadingTable, type TakeFilter } from './take-filter.ts';

export type TakeOrder = 'newest' | 'oldest' | 'cleanest';

/** Where a page ends: the next one begins after it, whatever was added or deleted meanwhile. */
export interface PageKey {
  readonly score: number | null;
  readonly recordedAt: number;
  readonly id: string;
}

export interface TakePage {
  readonly takes: readonly ListedTake[];
  /** Key for the next page, or null at the end. */
  readonly next: PageKey | null;
}

const mostOnPage = 200;

/**
 * One page of the takes that a filter lets through. `cleanest` is by overall score, those without one left out.
 *
 * @example await listTakes(db, { filter: { personId }, limit: 30 }) // { takes: […], next: { … } }
 */
export async function listTakes(
  db: LibraryDb,
  {
    filter = {},
    order = 'newest',
    limit = 30,
    after = null,
  }: {
    readonly filter?: TakeFilter;
    readonly order?: TakeOrder;
    readonly limit?: number;
    readonly after?: PageKey | null;
  } = {},
): Promise<TakePage> {
  const wanted = Math.max(1, Math.min(mostOnPage, Math.floor(limit)));
  const byScore = order === 'cleanest';
  const leading = byScore ? 'take' : leadingTable(filter);
  const time = sql.ref<number>(`${leading}.recordedAt`);
  const id = sql.ref<string>(leading === 'take' ? 'take.id' : `${leading}.takeId`);
  const direction = order === 'oldest' ? 'asc' : 'desc';
  const keys = await filteredTakes(db.selectFrom('take'), filter)
    .select(['take.score', 'take.recordedAt', 'take.id'])
    .$if(byScore, (query) => query.where('take.score', 'is not', null).orderBy('take.score', 'desc'))
    .$if(after !== null, (query) => query.where(beyond(after!, order, time, id)))
    .orderBy(time, direction)
    .orderBy(id, direction)
    .limit(wanted + 1)
    .execute();
  const page = keys.slice(0, wanted);
  return {
    takes: await listedTakes(
      db,
      page.map((key) => key.id),
    ),
    next: keys.length > wanted ? page.at(-1)! : null,
  };
}

/** A row value comparison, which SQLite takes straight to the place in the index. */
const beyond = (
  { score, recordedAt, id: lastId }: PageKey,
  order: TakeOrder,
  time: ReturnType<typeof sql.ref<number>>,
  id: ReturnType<typeof sql.ref<string>>,
) =>
  order === 'cleanest'
    ? sql<boolean>`(${sql.ref('take.score')}, ${time}, ${id}) < (${score}, ${recordedAt}, ${lastId})`
    : order === 'newest'
      ? sql<boolean>`(${time}, ${id}) < (${recordedAt}, ${lastId})`
      : sql<boolean>`(${time}, ${id}) > (${recordedAt}, ${lastId})`;

/** How many takes a filter lets through. */
export async function countTakes(db: LibraryDb, filter: TakeFilter = {}): Promise<number> {
  const { count } = await filteredTakes(
    db.selectFrom('take').select(({ fn }) => fn.countAll<number>().as('count')),
    filter,
  ).executeTakeFirstOrThrow();
  return count;
}
