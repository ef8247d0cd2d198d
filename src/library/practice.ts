import { sql } from 'kysely';
import { checkDay } from './check-day.ts';
import type { LibraryDb } from './library.ts';
import { LibraryFault } from './library-fault.ts';
import type { DiscomfortTable, PracticeTable } from './library-schema.ts';

export type PracticeEntry = Readonly<PracticeTable>;
export type DiscomfortNote = Readonly<DiscomfortTable>;

/** A player's practice on one day: recorded takes, and what was written down by hand beside them. */
interface PracticeDay {
  readonly day: string;
  readonly takes: number;
  /** Minutes and strokes of the recordings. */
  readonly recordedMinutes: number;
  readonly strokesRight: number;
  readonly strokesLeft: number;
  readonly strokesOther: number;
  readonly writtenMinutes: number;
  readonly writtenRight: number;
  readonly writtenLeft: number;
}

/** Writes down practice that wasn't recorded. Throws `LibraryFault` for a day or minutes that can't be. */
export async function writePractice(db: LibraryDb, entry: PracticeEntry): Promise<void> {
  checkDay('Day of practice', entry.day);
  const { minutes } = entry;
  if (!(minutes >= 0 && minutes <= 1440))
    throw new LibraryFault('value-out-of-range', {
      what: 'Minutes of practice',
      value: minutes,
      expected: 'Write between 0 and 1440 minutes for a day.',
    });
  await db
    .insertInto('practice')
    .values(entry)
    .onConflict((conflict) => conflict.column('id').doUpdateSet(entry))
    .execute();
}

/** What was written down by hand between two days, newest first. */
export async function listPractice(
  db: LibraryDb,
  { personId, fromDay, toDay }: Days,
): Promise<readonly PracticeEntry[]> {
  return db
    .selectFrom('practice')
    .selectAll()
    .where('personId', 'is', personId)
    .where('day', '>=', fromDay)
    .where('day', '<=', toDay)
    .orderBy('day', 'desc')
    .orderBy('id')
    .execute();
}

export async function deletePractice(db: LibraryDb, id: string): Promise<void> {
  await db.deleteFrom('practice').where('id', '=', id).execute();
}

/** Keeps a private note that something hurts or tires; it never leaves the library with a take. */
export async function writeDiscomfort(db: LibraryDb, note: DiscomfortNote): Promise<void> {
  checkDay('Day of the note', note.day);
  await db
    .insertInto('discomfort')
    .values(note)
    .onConflict((conflict) => conflict.column('id').doUpdateSet(note))
    .execute();
}

export async function deleteDiscomfort(db: LibraryDb, id: string): Promise<void> {
  await db.deleteFrom('discomfort').where('id', '=', id).execute();
}

interface Days {
  readonly personId: string | null;
  readonly fromDay: string;
  readonly toDay: string;
}

export async function listDiscomfort(
  db: LibraryDb,
  { personId, fromDay, toDay }: Days,
): Promise<readonly DiscomfortNote[]> {
  return db
    .selectFrom('discomfort')
    .selectAll()
    .where('personId', 'is', personId)
    .where('day', '>=', fromDay)
    .where('day', '<=', toDay)
    .orderBy('day')
    .execute();
}

/**
 * A player's days of practice, oldest first; days without any are left out. The plus keeps SQLite from the index of
 * players' takes, which leads to all of a player's rows; the index of days holds all that is asked of these few.
 */
export async function practiceDays(
  db: LibraryDb,
  { personId, fromDay, toDay }: Days,
): Promise<readonly PracticeDay[]> {
  const { rows } = await sql<PracticeDay>`
    select day, sum(takes) as takes, sum(recordedMinutes) as recordedMinutes,
      sum(strokesRight) as strokesRight, sum(strokesLeft) as strokesLeft, sum(strokesOther) as strokesOther,
      sum(writtenMinutes) as writtenMinutes, sum(writtenRight) as writtenRight, sum(writtenLeft) as writtenLeft
    from (
      select day, 1 as takes, duration / 60 as recordedMinutes, strokesRight, strokesLeft, strokesOther,
        0 as writtenMinutes, 0 as writtenRight, 0 as writtenLeft
      from take where +personId is ${personId} and day between ${fromDay} and ${toDay}
      union all
      select day, 0, 0, 0, 0, 0, minutes, coalesce(strokesRight, 0), coalesce(strokesLeft, 0)
      from practice where personId is ${personId} and day between ${fromDay} and ${toDay}
    ) group by day order by day`.execute(db);
  return rows;
}
