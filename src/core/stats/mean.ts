/**
 * Arithmetic mean of one or more finite numbers; throws RangeError when there are none.
 * A second pass adds the mean of the deviations, which takes the rounding error of the first sum away.
 *
 * @example mean([2, 4, 9]) // 5
 */
export function mean(values: ArrayLike<number>): number {
  const n = values.length;
  if (n === 0) throw new RangeError('mean of nothing');
  let sum = 0;
  for (let i = 0; i < n; i++) sum += values[i]!;
  const first = sum / n;
  let rest = 0;
  for (let i = 0; i < n; i++) rest += values[i]! - first;
  return first + rest / n;
}
