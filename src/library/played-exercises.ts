import type { LibraryDb } from './library.ts';
import { dayBegins } from './take-filter.ts';

/** An exercise of which takes are kept. */
export interface PlayedExercise {
  readonly id: string;
  /** Untrusted. */
  readonly label: string;
  readonly notation: string;
}

/** The exercises of a player's takes, or of those without a player (null), since a day or ever, the one played last first. */
export async function playedExercises(
  db: LibraryDb,
  personId: string | null,
  fromDay?: string,
): Promise<readonly PlayedExercise[]> {
  return db
    .selectFrom('takeLine')
    .innerJoin('exercise', 'exercise.id', 'takeLine.exerciseId')
    .select(['exercise.id', 'exercise.label', 'exercise.notation'])
    .$if(fromDay === undefined, (query) => query.where('takeLine.personId', 'is', personId))
    .$if(fromDay !== undefined, (query) =>
      // Few takes are that new, and the index by player and moment leads to them; their lines follow. The player is
      // named there alone: named of the lines too, all of the player's lines would be read.
      query.where('takeLine.takeId', 'in', takesSince(db, personId, fromDay!)),
    )
    .groupBy(['exercise.id', 'exercise.label', 'exercise.notation'])
    .orderBy(({ fn }) => fn.max('takeLine.recordedAt'), 'desc')
    .execute();
}

const takesSince = (db: LibraryDb, personId: string | null, fromDay: string) =>
  db
    .selectFrom('take')
    .select('take.id')
    .where('take.personId', 'is', personId)
    .where('take.recordedAt', '>=', dayBegins(fromDay))
    .where('take.day', '>=', fromDay);
