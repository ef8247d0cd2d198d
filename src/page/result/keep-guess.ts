import { openBrowserLibrary } from '../library/browser-library.ts';
import type { OwnGuess } from './guess-form.tsx';
import type { ShownTake } from './shown-take.ts';

/** Keeps a guess with its take, once that is kept; a take that isn't kept takes its guess with it. */
export async function keepGuessOf({ kept }: ShownTake, guess: OwnGuess): Promise<void> {
  const takeId = await kept;
  if (takeId !== null)
    await openBrowserLibrary().keepGuess({ takeId, guess: { guessedAt: Date.now(), ...guess } });
}
