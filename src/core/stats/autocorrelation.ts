import { mean } from './mean.ts';

/**
 * Autocorrelation of a series at one lag: Σ(xᵢ − x̄)(xᵢ₋ₖ − x̄) / Σ(xᵢ − x̄)², the definition of the NIST reference
 * data sets. A constant series has none: 0. Throws RangeError when the series isn't longer than the lag.
 *
 * @example autocorrelation([1, -1, 1, -1], 1) // −0.75
 */
export function autocorrelation(series: ArrayLike<number>, lag: number): number {
  const n = series.length;
  if (n <= lag) throw new RangeError('series not longer than the lag');
  const centre = mean(series);
  let products = 0;
  let squares = 0;
  for (let i = 0; i < n; i++) {
    const d = series[i]! - centre;
    squares += d * d;
    if (i >= lag) products += d * (series[i - lag]! - centre);
  }
  return squares > 0 ? products / squares : 0;
}
