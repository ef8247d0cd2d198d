import { sql } from 'kysely';
import type { LibraryDb } from './library.ts';

/** What there is to choose from when narrowing a listing. */
export interface FilterChoices {
  readonly exercises: readonly { readonly id: string; readonly label: string; readonly notation: string }[];
  readonly tags: readonly string[];
  readonly techniques: readonly string[];
}

/** Exercises, tags and techniques that takes of the library have, in alphabetical order. */
export async function filterChoices(db: LibraryDb): Promise<FilterChoices> {
  const exercises = await db
    .selectFrom('exercise')
    .select(['id', 'label', 'notation'])
    .orderBy('label')
    .orderBy('id')
    .execute();
  return {
    exercises,
    tags: await distinct(db, 'takeTag', 'tag'),
    techniques: (await distinct(db, 'take', 'technique')).filter((technique) => technique !== ''),
  };
}

/** Different values of an indexed column: hops from one to the next in the index instead of reading it all. */
async function distinct(db: LibraryDb, table: string, column: string): Promise<string[]> {
  const [from, what] = [sql.table(table), sql.ref(column)];
  const { rows } = await sql<{ value: string }>`
    with recursive found(value) as (
      select min(${what}) from ${from}
      union all
      select (select min(${what}) from ${from} where ${what} > found.value) from found where found.value is not null
    )
    select value from found where value is not null`.execute(db);
  return rows.map(({ value }) => value);
}
