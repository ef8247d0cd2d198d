import { mean } from './mean.ts';

/**
 * Sample standard deviation (divisor n − 1) of two or more numbers, in their unit; throws RangeError under two.
 * Two passes with the correction of Chan, Golub & LeVeque 1983 (quoted from memory).
 *
 * @example standardDeviation([2, 4, 4, 4, 5, 5, 7, 9]) // √(32/7)
 */
export function standardDeviation(values: ArrayLike<number>): number {
  const n = values.length;
  if (n < 2) throw new RangeError('standard deviation of fewer than two values');
  const centre = mean(values);
  let squares = 0;
  let rest = 0;
  for (let i = 0; i < n; i++) {
    const d = values[i]! - centre;
    squares += d * d;
    rest += d;
  }
  return Math.sqrt((squares - (rest * rest) / n) / (n - 1));
}
