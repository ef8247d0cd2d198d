import { solveIncreasing } from './solve-increasing.ts';
import { studentTCdf } from './student-t-cdf.ts';

/**
 * Quantile of Student's t with `degrees` > 0 (fractions allowed) degrees of freedom, 0 < p < 1; RangeError outside.
 *
 * @example studentTQuantile(0.975, 10) // 2.228139
 */
export function studentTQuantile(p: number, degrees: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError('probability outside 0 … 1');
  if (p === 0.5) return 0;
  if (p > 0.5) return -studentTQuantile(1 - p, degrees);
  let low = -2;
  while (studentTCdf(low, degrees) > p) low *= 2;
  return solveIncreasing((t) => studentTCdf(t, degrees) - p, low, 0);
}
