import type { TakeResult } from '../../core/result/take-result.ts';
import { graderVersion } from '../../library/grader-version.ts';
import type { KeptTake } from '../../library/keep-take.ts';
import type { LibraryClient } from '../../library/library-calls.ts';
import { LibraryFault } from '../../library/library-fault.ts';
import type { NewTake } from '../../library/new-take.ts';
import { currentPlayer, setCurrentPlayer } from './current-player.ts';
import { localDay } from './local-day.ts';
import { pageLibrary } from './page-library.ts';

export interface GradedTake extends Pick<NewTake, 'details' | 'setUpId' | 'tags' | 'recordingFacts'> {
  readonly result: TakeResult;
  /** What was played, as a sheet's text. */
  readonly sheetText: string;
  /** The recording as a file. */
  readonly audio: { readonly name: string; readonly bytes: Uint8Array };
  /** When it was played; now unless given. */
  readonly recordedAt?: number;
}

/**
 * Keeps a graded take in the browser's library, for the player whose turn it is. Rejects with `LibraryFault`, whose
 * sentence `faultInWords` gives, where it can't be kept.
 *
 * @example const { id } = await keepGradedTake({ result, sheetText: writeSheet(sheet), audio: { name, bytes } });
 */
export async function keepGradedTake(
  { recordedAt = Date.now(), ...take }: GradedTake,
  library: LibraryClient = pageLibrary(),
): Promise<KeptTake> {
  const keep = (personId: string | null) =>
    library.keepTake({
      ...take,
      recordedAt,
      day: localDay(recordedAt),
      keptAt: Date.now(),
      gradedWith: graderVersion,
      personId,
    });
  try {
    return await keep(currentPlayer());
  } catch (error) {
    if (!(error instanceof LibraryFault && error.code === 'no-such-person')) throw error;
    setCurrentPlayer(null); // deleted meanwhile
    return keep(null);
  }
}
