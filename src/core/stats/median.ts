import { quantile } from './quantile.ts';

/**
 * Middle value, or the mean of the two in the middle; throws RangeError without values.
 *
 * @example median([5, 1, 4]) // 4
 */
export function median(values: ArrayLike<number>): number {
  return quantile(values, 0.5);
}
