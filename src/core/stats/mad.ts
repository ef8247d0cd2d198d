import { median } from './median.ts';

/** Makes the median absolute deviation of normal values estimate their standard deviation: 1/Φ⁻¹(¾). */
export const madToSd = 1.482602218505602;

/**
 * Median absolute deviation from the median, not rescaled; throws RangeError without values.
 *
 * @example mad([1, 2, 3, 4, 100]) // 1
 */
export function mad(values: ArrayLike<number>): number {
  const centre = median(values);
  return median(Float64Array.from(values, (value) => Math.abs(value - centre)));
}
