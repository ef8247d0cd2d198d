import type { GuessAnswers } from '../../core/progress/guess-truth.ts';
import { pageLibrary } from '../library/page-library.ts';
import type { ShownTake } from './shown-take.ts';

/**
 * Keeps a guess with its take, once that is kept; a take that isn't kept takes its guess with it. Whether the guess was
 * kept.
 */
export async function keepGuessOf({ kept }: ShownTake, guess: GuessAnswers): Promise<boolean> {
  const takeId = await kept;
  if (takeId === null) return false;
  return pageLibrary().keepGuess({ takeId, guess: { guessedAt: Date.now(), ...guess } });
}
