/** Bounds of an interval. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/**
 * Wilson's score interval for a share: `share` of `n` independent trials (n may be an effective, fractional
 * number), `quantile` the two-sided critical value (1.96 for 95 %). Stays honest at 0 and 1.
 * Wilson 1927, JASA 22.
 *
 * @example wilsonInterval(0.2, 20, 1.96) // 0.0807 … 0.4160
 */
export function wilsonInterval(share: number, n: number, quantile: number): Interval {
  if (!(n > 0)) throw new RangeError('a share of nothing');
  const z2 = quantile * quantile;
  const centre = (share + z2 / (2 * n)) / (1 + z2 / n);
  const half = (quantile * Math.sqrt((share * (1 - share)) / n + z2 / (4 * n * n))) / (1 + z2 / n);
  return { low: Math.max(0, centre - half), high: Math.min(1, centre + half) };
}
