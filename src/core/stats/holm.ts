/**
 * p-values corrected for the number of questions asked, by Holm's step-down rule (1979): the chance of any false
 * finding stays under the level at which the corrected values are read. Order is kept.
 *
 * @example holm([0.01, 0.04, 0.03]) // [0.03, 0.06, 0.06]
 */
export function holm(pValues: readonly number[]): number[] {
  const order = pValues.map((_, i) => i).sort((a, b) => pValues[a]! - pValues[b]!);
  const corrected = new Array<number>(pValues.length);
  let highest = 0;
  order.forEach((at, rank) => {
    highest = Math.max(highest, Math.min(1, pValues[at]! * (pValues.length - rank)));
    corrected[at] = highest;
  });
  return corrected;
}
