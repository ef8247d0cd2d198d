import { type MeanDifference, type SampleSummary, tOfDifference } from './mean-difference.ts';

/**
 * Student's comparison of two means whose samples are taken to scatter alike: t = (x̄ − ȳ)/(s√(1/m + 1/n)) with
 * s² = [(m − 1)s₁² + (n − 1)s₂²]/(m + n − 2). One of the samples may be a single value, whose sd is then passed over.
 * RangeError where a sample is empty or both are single values.
 *
 * @example pooledT(summaryOf([1, 2, 3]), summaryOf([2, 4, 6])) // t −1.549 with 4 degrees of freedom
 */
export function pooledT(first: SampleSummary, second: SampleSummary): MeanDifference {
  const degrees = first.n + second.n - 2;
  if (first.n < 1 || second.n < 1 || degrees < 1) throw new RangeError('means without scatter');
  const squares = ({ n, sd }: SampleSummary) => (n > 1 ? (n - 1) * sd ** 2 : 0);
  const variance = (squares(first) + squares(second)) / degrees;
  const se = Math.sqrt(variance * (1 / first.n + 1 / second.n));
  return tOfDifference(first.mean - second.mean, se, degrees);
}
