/** Events of a list and of a reference that belong together, as places in the two lists. */
export interface MatchedPair {
  readonly reference: number;
  readonly estimate: number;
}

/**
 * Matches events one to one within ±`window`: as many pairs as can be, and among those the pairs that lie closest
 * together (least sum of distances). Both lists sorted, seconds. An estimate at the window's very edge counts, the
 * edge being `reference ± window` as rounded (Raffel et al. 2014, mir_eval, compare so).
 *
 * On a line some best matching never crosses, so a programme over the two lists finds it; lists are cut where
 * nothing is within reach, which keeps that short.
 *
 * @example matchEvents([1, 1.04], [1.03, 1.08], 0.05).length // 2, where nearest-first would find 1
 */
export function matchEvents(
  reference: ArrayLike<number>,
  estimates: ArrayLike<number>,
  window: number,
): MatchedPair[] {
  const pairs: MatchedPair[] = [];
  let i = 0;
  let j = 0;
  while (i < reference.length && j < estimates.length) {
    const iFrom = i;
    const jFrom = j;
    let end = Number.NEGATIVE_INFINITY;
    for (;;) {
      const a = i < reference.length ? reference[i]! : Number.POSITIVE_INFINITY;
      const b = j < estimates.length ? estimates[j]! : Number.POSITIVE_INFINITY;
      const next = Math.min(a, b);
      const first = i === iFrom && j === jFrom;
      if (next === Number.POSITIVE_INFINITY || (!first && next > end + window * (1 + 1e-9) + 1e-12)) break;
      end = next;
      if (a <= b) i++;
      else j++;
    }
    pairs.push(...matchWithin(reference, iFrom, i, estimates, jFrom, j, window));
  }
  return pairs;
}

/** The best matching of `reference[a … aEnd)` with `estimates[b … bEnd)`. */
function matchWithin(
  reference: ArrayLike<number>,
  a: number,
  aEnd: number,
  estimates: ArrayLike<number>,
  b: number,
  bEnd: number,
  window: number,
): MatchedPair[] {
  const rows = aEnd - a;
  const width = bEnd - b + 1;
  const count = new Int32Array((rows + 1) * width);
  const distance = new Float64Array((rows + 1) * width);
  const step = new Uint8Array((rows + 1) * width);
  const [skipReference, skipEstimate, pair] = [1, 2, 3];
  for (let r = 1; r <= rows; r++) {
    for (let e = 1; e < width; e++) {
      const here = r * width + e;
      const above = here - width;
      const left = here - 1;
      const fromAbove =
        count[above]! > count[left]! ||
        (count[above]! === count[left]! && distance[above]! <= distance[left]!);
      const best = fromAbove ? above : left;
      count[here] = count[best]!;
      distance[here] = distance[best]!;
      step[here] = fromAbove ? skipReference : skipEstimate;
      const time = reference[a + r - 1]!;
      const estimate = estimates[b + e - 1]!;
      if (estimate < time - window || estimate > time + window) continue;
      const pairs = count[above - 1]! + 1;
      const total = distance[above - 1]! + Math.abs(estimate - time);
      if (pairs < count[here]! || (pairs === count[here]! && total >= distance[here]!)) continue;
      count[here] = pairs;
      distance[here] = total;
      step[here] = pair;
    }
  }
  const found: MatchedPair[] = [];
  for (let r = rows, e = width - 1; r > 0 && e > 0; ) {
    const taken = step[r * width + e]!;
    if (taken === pair) found.push({ reference: a + r - 1, estimate: b + e - 1 });
    if (taken !== skipEstimate) r--;
    if (taken !== skipReference) e--;
  }
  return found.reverse();
}

/** Agreement of a list of events with a reference. */
export interface Agreement {
  readonly f: number;
  readonly precision: number;
  readonly recall: number;
}

/**
 * Precision, recall and their harmonic mean F from counts; all 0 where either list is empty (as in mir_eval).
 *
 * @example agreement(1, 4, 5) // { f: 2 / 9, precision: 0.2, recall: 0.25 }
 */
export function agreement(matched: number, references: number, estimates: number): Agreement {
  if (matched === 0) return { f: 0, precision: 0, recall: 0 };
  const precision = matched / estimates;
  const recall = matched / references;
  return { f: (2 * precision * recall) / (precision + recall), precision, recall };
}
