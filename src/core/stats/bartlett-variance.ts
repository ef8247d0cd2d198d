/**
 * Variance of the sum of a serially correlated series whose expectation is zero: Σuᵢ² + 2 Σₖ (1 − k/(L + 1)) Σuᵢuᵢ₊ₖ
 * for lags up to L, never negative. `group` (same length) keeps products apart that lie in different runs.
 * Newey & West 1987.
 *
 * @example bartlettVariance([1, -1, 1, -1], 1) // 4 − 3 = 1
 */
export function bartlettVariance(series: ArrayLike<number>, lag: number, group?: ArrayLike<number>): number {
  const n = series.length;
  let total = 0;
  for (let k = 0; k <= lag; k++) {
    let products = 0;
    for (let i = k; i < n; i++) {
      if (group === undefined || group[i] === group[i - k]) products += series[i]! * series[i - k]!;
    }
    total += products * (k === 0 ? 1 : 2 * (1 - k / (lag + 1)));
  }
  return Math.max(0, total);
}
