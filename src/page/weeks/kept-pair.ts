import type { LibraryClient } from '../../library/library-calls.ts';
import { type PairSide, takePair } from '../../library/take-pair.ts';
import type { TakePair } from '../../report/weeks/take-pair-page.ts';
import { sharedEngine } from '../engine/shared-engine.ts';
import { dayInWords, playedInWords, timeInWords } from '../library/take-words.ts';

/** Two kept takes held against each other, both to be heard where their recordings are kept. */
export async function keptPair(library: LibraryClient, first: string, second: string): Promise<TakePair> {
  return takePair(await sideOf(library, first), await sideOf(library, second));
}

async function sideOf(library: LibraryClient, id: string): Promise<PairSide> {
  const opened = await library.readTake(id);
  const { take } = opened;
  const bytes = take.partFrom === null && take.audioHash !== null ? await library.readAudio(id) : null;
  return {
    opened,
    played: `${dayInWords(take.day)}, ${timeInWords(take.recordedAt)}`,
    exercise: playedInWords(take),
    sound: bytes === null ? null : await sharedEngine().mp3({ bytes }),
  };
}
