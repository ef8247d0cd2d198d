import { normalCdf } from './normal-cdf.ts';

/** Kendall's S of a series against its order, its tie-corrected variance, and a two-sided p. */
interface TrendTest {
  readonly s: number;
  readonly variance: number;
  /** Normal deviate with continuity correction. */
  readonly z: number;
  readonly p: number;
  readonly exact: boolean;
}

/** Number of permutations of n values by their number of inversions, as shares of all. */
function inversionShares(n: number): number[] {
  let shares = [1];
  for (let size = 2; size <= n; size++) {
    const next = new Array<number>(shares.length + size - 1).fill(0);
    shares.forEach((share, i) => {
      for (let k = 0; k < size; k++) next[i + k]! += share / size;
    });
    shares = next;
  }
  return shares;
}

/** Var S = [n(n − 1)(2n + 5) − Σ t(t − 1)(2t + 5)]/18 over groups of t equal values. */
export function kendallVariance(series: ArrayLike<number>): number {
  const n = series.length;
  const sizes = new Map<number, number>();
  for (let i = 0; i < n; i++) sizes.set(series[i]!, (sizes.get(series[i]!) ?? 0) + 1);
  let variance = n * (n - 1) * (2 * n + 5);
  for (const t of sizes.values()) variance -= t * (t - 1) * (2 * t + 5);
  return variance / 18;
}

/**
 * Whether a series rises or falls with its order: Mann 1945, Kendall 1975. Exact for up to 49 values without
 * ties, else the normal approximation with continuity correction. Throws RangeError under three values.
 *
 * @example mannKendall([1, 2, 3, 4]).p // 2/24
 */
export function mannKendall(series: ArrayLike<number>): TrendTest {
  const n = series.length;
  if (n < 3) throw new RangeError('a trend needs three values');
  let s = 0;
  let ties = false;
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const sign = Math.sign(series[j]! - series[i]!);
      s += sign;
      ties ||= sign === 0;
    }
  }
  const variance = kendallVariance(series);
  const z = s === 0 || variance === 0 ? 0 : (s - Math.sign(s)) / Math.sqrt(variance);
  if (ties || n >= 50) return { s, variance, z, p: Math.min(1, 2 * normalCdf(-Math.abs(z))), exact: false };
  const pairs = (n * (n - 1)) / 2;
  const inversions = (pairs - Math.abs(s)) / 2;
  const tail = inversionShares(n)
    .slice(0, inversions + 1)
    .reduce((sum, share) => sum + share, 0);
  return { s, variance, z, p: Math.min(1, 2 * tail), exact: true };
}
