import { type MeanDifference, type SampleSummary, tOfDifference } from './mean-difference.ts';

/**
 * Welch's comparison of two means whose samples may scatter differently (Welch 1947, with Satterthwaite's degrees of
 * freedom): t = (x̄ − ȳ)/√(s²/m + u²/n), degrees (s²/m + u²/n)²/[(s²/m)²/(m − 1) + (u²/n)²/(n − 1)]. RangeError where
 * a sample has fewer than two values.
 *
 * @example welchT(summaryOf([1, 2, 3]), summaryOf([2, 4, 6])) // t −1.549 with 2.94 degrees of freedom
 */
export function welchT(first: SampleSummary, second: SampleSummary): MeanDifference {
  if (first.n < 2 || second.n < 2) throw new RangeError('a mean without scatter');
  const a = first.sd ** 2 / first.n;
  const b = second.sd ** 2 / second.n;
  // Without scatter on either side any degrees serve; those of the pooled test.
  const degrees =
    a + b > 0 ? (a + b) ** 2 / (a ** 2 / (first.n - 1) + b ** 2 / (second.n - 1)) : first.n + second.n - 2;
  return tOfDifference(first.mean - second.mean, Math.sqrt(a + b), degrees);
}
