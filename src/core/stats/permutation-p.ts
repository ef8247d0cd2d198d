/** Most arrangements that are gone through one by one. */
const mostArrangements = 1_000_000;
/** Sums that are equal but for the last bits count as equal. */
const lastBits = 1e-9;

/**
 * Exact two-sided p of paired differences: share of all 2ⁿ choices of their signs whose sum lies as far from 0 or
 * further (Fisher 1935). RangeError for none, or for more than 19.
 *
 * @example signFlipP([1, 2, 3]) // 2/8
 */
export function signFlipP(differences: readonly number[]): number {
  const n = differences.length;
  if (n === 0 || 2 ** n > mostArrangements) throw new RangeError('1 to 19 differences are needed');
  const observed = Math.abs(differences.reduce((sum, d) => sum + d, 0));
  let extreme = 0;
  for (let signs = 0; signs < 2 ** n; signs++) {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += (signs >> i) & 1 ? differences[i]! : -differences[i]!;
    if (Math.abs(sum) >= observed * (1 - lastBits)) extreme++;
  }
  return extreme / 2 ** n;
}

/**
 * Exact one-sided p that the first sample's mean is larger: share of all ways to draw as many values from both together
 * whose sum is as large or larger (Pitman 1937). RangeError for an empty sample or more than a million ways.
 *
 * @example permutationP([4, 5], [1, 2]) // 1/6
 */
export function permutationP(first: readonly number[], second: readonly number[]): number {
  const all = [...first, ...second];
  const n = all.length;
  let ways = 1;
  for (let k = 0; k < first.length; k++) ways = (ways * (n - k)) / (k + 1);
  if (first.length === 0 || second.length === 0 || ways > mostArrangements) {
    throw new RangeError('two samples of at most a million arrangements are needed');
  }
  const observed = first.reduce((sum, value) => sum + value, 0);
  const least = observed - lastBits * Math.max(1, Math.abs(observed));
  const count = (at: number, left: number, sum: number): number => {
    if (left === 0) return sum >= least ? 1 : 0;
    if (n - at < left) return 0;
    return count(at + 1, left - 1, sum + all[at]!) + count(at + 1, left, sum);
  };
  return count(0, first.length, 0) / Math.round(ways);
}
