import { compareSetUp, type SetUpComparison } from '../../../core/progress/compare-set-up.ts';
import type { SetUpReference } from '../../../core/progress/set-up-reference.ts';
import type { SetUp } from '../../../library/set-up.ts';

/** References played within so long of each other are tries of one sitting, ms. Our judgement. */
export const sittingMs = 15 * 60_000;

const side = ({ levelDb, spreadDb, strokes }: SetUp['levels']['right']) => ({
  mean: levelDb,
  sd: spreadDb,
  n: strokes,
});

/** A reference kept before, as it is compared. */
const referenceOf = ({ levels }: SetUp): SetUpReference => ({
  right: side(levels.right),
  left: side(levels.left),
});

interface ComparedWithKept {
  /** The reference it was compared with, and how; null where there is none. */
  readonly before: SetUp | null;
  readonly comparison: SetUpComparison | null;
  /** The kept reference that it is alike; takes belong to that from now on. */
  readonly alike: SetUp | null;
}

/**
 * Compares a reference with the last one of another sitting: who moves the microphone back and plays again wants to know
 * whether it stands as last week, not as a minute ago. Only where there is none, the last try of this sitting is what there
 * is. Where it isn't as that, it may still be as a try of this sitting. `kept` is newest first, all of one microphone.
 *
 * @example compareWithKept(reference, [aMinuteAgo, lastWeek], now).before // lastWeek
 */
export function compareWithKept(
  reference: SetUpReference,
  kept: readonly SetUp[],
  now: number,
): ComparedWithKept {
  const isOfNow = ({ recordedAt }: SetUp) => now - recordedAt < sittingMs;
  const before = kept.find((one) => !isOfNow(one)) ?? kept[0] ?? null;
  if (before === null) return { before, comparison: null, alike: null };
  const how = (one: SetUp) => compareSetUp(reference, referenceOf(one));
  const comparison = how(before);
  const tries = kept.filter((one) => one !== before && isOfNow(one));
  const alike = comparison.verdict === 'alike' ? before : tries.find((one) => how(one).verdict === 'alike');
  return { before, comparison, alike: alike ?? null };
}
