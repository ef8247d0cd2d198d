import { nearestText } from '../../core/exercise/nearest-text.ts';
import type { LibraryDb } from '../../library/library.ts';
import { CommandFault } from '../command-fault.ts';

export interface PlayedExercise {
  readonly id: string;
  readonly label: string;
  readonly notation: string;
}

/**
 * The exercises of a player's takes, the newest first, or the one that is named by its id, its notation or its label.
 * Throws a usage fault where nothing of it is kept.
 */
export async function playedExercises(
  db: LibraryDb,
  personId: string,
  named?: string,
): Promise<readonly PlayedExercise[]> {
  const played = await db
    .selectFrom('takeLine')
    .innerJoin('exercise', 'exercise.id', 'takeLine.exerciseId')
    .select(['exercise.id', 'exercise.label', 'exercise.notation'])
    .where('takeLine.personId', '=', personId)
    .groupBy(['exercise.id', 'exercise.label', 'exercise.notation'])
    .orderBy(({ fn }) => fn.max('takeLine.recordedAt'), 'desc')
    .execute();
  if (named === undefined) return played;
  const wanted = named.trim();
  const found = played.find(({ id, label, notation }) => [id, label, notation].includes(wanted));
  if (found !== undefined) return [found];
  const nearest = nearestText(
    wanted,
    played.map(({ id }) => id),
  );
  throw new CommandFault(
    'usage',
    `Nothing of "${named}" is kept for this player.${nearest === '' ? ' `evenhand progress --player …` lists what is.' : ` Did you mean ${nearest}?`}`,
  );
}
