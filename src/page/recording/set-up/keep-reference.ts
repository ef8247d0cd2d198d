import type { SetUpComparison } from '../../../core/progress/compare-set-up.ts';
import type { SetUpReference } from '../../../core/progress/set-up-reference.ts';
import { currentPlayer } from '../../library/current-player.ts';
import { localDay } from '../../library/local-day.ts';
import { pageLibrary } from '../../library/page-library.ts';
import { compareWithKept } from './compare-with-kept.ts';
import { noteSetUp } from './set-up-of-today.ts';

const kept = (side: SetUpReference['right']) => ({ levelDb: side.mean, spreadDb: side.sd, strokes: side.n });

export interface KeptReference {
  /** Null where there is none to compare with. */
  readonly comparison: SetUpComparison | null;
  /** When the one before was played, ms since 1970. */
  readonly before: number | null;
}

/**
 * Keeps a reference in the library and compares it with the player's last ones on the same microphone. Takes from now on
 * belong to it; where it is like one of those, to that one, so that their levels compare. Rejects with
 * `LibraryFault` where nothing can be kept.
 */
export async function keepReference(
  reference: SetUpReference,
  {
    device,
    noiseFloorDb,
    now,
  }: { readonly device: string; readonly noiseFloorDb: number; readonly now: number },
): Promise<KeptReference> {
  const library = pageLibrary();
  const personId = currentPlayer();
  const own = (await library.listSetUps({ personId })).filter((one) => one.device === device);
  const { before, comparison, alike } = compareWithKept(reference, own, now);
  const compared = { comparison, before: before?.recordedAt ?? null };
  if (alike !== null) {
    noteSetUp(alike.id, now);
    return compared;
  }
  const id = crypto.randomUUID();
  await library.keepSetUp({
    id,
    personId,
    recordedAt: now,
    day: localDay(now),
    pad: '',
    sticks: '',
    device,
    levels: { right: kept(reference.right), left: kept(reference.left), noiseFloorDb },
  });
  noteSetUp(id, now);
  return compared;
}
