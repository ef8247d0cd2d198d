import { normalCdf } from './normal-cdf.ts';
import { normalQuantile } from './normal-quantile.ts';
import { quantile } from './quantile.ts';
import type { Interval } from './wilson-interval.ts';

/**
 * Acceleration of a statistic of n values by the jackknife: Σ d³ / (6 (Σ d²)^1.5), d the mean of the n estimates that
 * leave one value out less each of them. Efron 1987.
 *
 * @example acceleration([1, 2, 3], mean) // 0, since the values lie evenly
 */
export function acceleration<T>(values: readonly T[], statistic: (sample: readonly T[]) => number): number {
  const without = values.map((_, left) => statistic(values.filter((__, i) => i !== left)));
  const centre = without.reduce((sum, value) => sum + value, 0) / without.length;
  const power = (k: number) => without.reduce((sum, value) => sum + (centre - value) ** k, 0);
  const squares = power(2);
  return squares > 0 ? power(3) / (6 * squares ** 1.5) : 0;
}

/**
 * Bias-corrected and accelerated bootstrap interval (Efron 1987) of a statistic from its values on resamples, which the
 * caller draws, so that the same draws give the same interval. Needs at least one resample on either side of the
 * estimate, else RangeError. `level` 0 … 1.
 *
 * @example resamples that lie evenly round the estimate, without acceleration // their own quantiles
 */
export function bcaInterval(
  estimate: number,
  resampled: readonly number[],
  accelerated: number,
  level = 0.95,
): Interval {
  const below = resampled.filter((value) => value < estimate).length / resampled.length;
  if (!(below > 0 && below < 1)) throw new RangeError('all resamples lie on one side');
  const bias = normalQuantile(below);
  const bound = (p: number) => {
    const shifted = bias + normalQuantile(p);
    return quantile(resampled, normalCdf(bias + shifted / (1 - accelerated * shifted)));
  };
  return { low: bound((1 - level) / 2), high: bound((1 + level) / 2) };
}
