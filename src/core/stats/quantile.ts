/**
 * Quantile by linear interpolation between order statistics at 1 + (n − 1)p: type 7 of Hyndman & Fan 1996.
 * Throws RangeError without values or for p outside 0 … 1.
 *
 * @example quantile([4, 1, 3, 2], 0.25) // 1.75
 */
export function quantile(values: ArrayLike<number>, p: number): number {
  if (values.length === 0) throw new RangeError('quantile of nothing');
  if (!(p >= 0 && p <= 1)) throw new RangeError('probability outside 0 … 1');
  const sorted = new Float64Array(values).sort();
  const place = (sorted.length - 1) * p;
  const below = Math.floor(place);
  const low = sorted[below]!;
  const high = sorted[Math.min(below + 1, sorted.length - 1)]!;
  return low + (place - below) * (high - low);
}
