import { nearestText } from '../../core/exercise/nearest-text.ts';
import type { LibraryDb } from '../../library/library.ts';
import { type PlayedExercise, playedExercises } from '../../library/played-exercises.ts';
import { CommandFault } from '../command-fault.ts';

/**
 * The exercises of a player's takes, the newest first, or the one that is named by its id, its notation or its label.
 * Throws a usage fault where nothing of it is kept.
 */
export async function namedExercises(
  db: LibraryDb,
  personId: string,
  named?: string,
): Promise<readonly PlayedExercise[]> {
  const played = await playedExercises(db, personId);
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
