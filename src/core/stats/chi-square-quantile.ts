import { incompleteGamma } from './incomplete-gamma.ts';
import { normalQuantile } from './normal-quantile.ts';
import { solveIncreasing } from './solve-increasing.ts';

/**
 * Quantile of chi-square with `degrees` > 0 (fractions allowed) degrees of freedom, 0 < p < 1; RangeError outside.
 * Bracketed round the cube-root approximation of Wilson & Hilferty 1931.
 *
 * @example chiSquareQuantile(0.95, 1) // 3.841459
 */
export function chiSquareQuantile(p: number, degrees: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError('probability outside 0 … 1');
  if (!(degrees > 0)) throw new RangeError('degrees of freedom must be positive');
  const below = (x: number) => incompleteGamma(degrees / 2, x / 2).lower - p;
  const spread = 2 / (9 * degrees);
  const guess = degrees * Math.max(1e-8, 1 - spread + normalQuantile(p) * Math.sqrt(spread)) ** 3;
  let low = guess * 0.9;
  let high = guess * 1.1;
  while (low > 1e-300 && below(low) > 0) low /= 4;
  while (below(high) < 0) high *= 2;
  return solveIncreasing(below, low, high);
}
