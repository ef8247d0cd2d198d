import { incompleteBeta } from './incomplete-beta.ts';

/** A median that every value near the middle has a share in. */
interface SmoothMedian {
  readonly value: number;
  /** For each value, how far it moves the median; their squares add up to its squared standard error. */
  readonly pulls: Float64Array;
}

/** Weights this many standard deviations of a Beta variable from the middle are nought in double precision. */
const reach = 9;

/** Weights of n ascending values: how much of Beta((n + 1)/2, (n + 1)/2) lies between i/n and (i + 1)/n. */
function weightsOf(n: number): Float64Array {
  const shape = (n + 1) / 2;
  const deviation = 0.5 / Math.sqrt(n + 2);
  const weights = new Float64Array(n);
  let below = 0;
  for (let i = 0; i < n; i++) {
    const upTo = (i + 1) / n;
    if (upTo < 0.5 - reach * deviation) continue;
    const total = upTo > 0.5 + reach * deviation ? 1 : incompleteBeta(shape, shape, upTo);
    weights[i] = total - below;
    below = total;
  }
  return weights;
}

/**
 * Median of two or more values as Harrell & Davis 1982 estimate it: the mean of all values, weighted by how likely each
 * is to be the middle one of such a sample. Small errors of single values average out in it, as they don't where one
 * value is the median; few values far off still move it little. Standard error by the jackknife: each value's pull is
 * √((n − 1)/n) times how far the estimate without it lies below the mean of such estimates. RangeError under two
 * values.
 *
 * @example smoothMedian([1, 2, 3, 4, 5]).value // 3
 */
export function smoothMedian(values: ArrayLike<number>): SmoothMedian {
  const n = values.length;
  if (n < 2) throw new RangeError('a smooth median needs two values');
  const order = Array.from({ length: n }, (_, i) => i).sort((a, b) => values[a]! - values[b]!);
  const all = weightsOf(n);
  const without = weightsOf(n - 1);
  const value = order.reduce((sum, at, i) => sum + all[i]! * values[at]!, 0);

  // Without the first of all, then one step at a time.
  let left = order.reduce((sum, at, i) => (i === 0 ? 0 : sum + without[i - 1]! * values[at]!), 0);
  const estimates = new Float64Array(n);
  order.forEach((at, i) => {
    if (i > 0) left += without[i - 1]! * (values[order[i - 1]!]! - values[at]!);
    estimates[at] = left;
  });
  const mean = estimates.reduce((sum, estimate) => sum + estimate, 0) / n;
  const factor = Math.sqrt((n - 1) / n);
  return { value, pulls: estimates.map((estimate) => factor * (mean - estimate)) };
}
