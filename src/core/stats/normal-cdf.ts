import { incompleteGamma } from './incomplete-gamma.ts';

/**
 * Probability that a standard normal value lies below z; small tails keep their relative precision.
 *
 * @example normalCdf(0) // 0.5
 */
export function normalCdf(z: number): number {
  const parts = incompleteGamma(0.5, (z * z) / 2);
  return z < 0 ? parts.upper / 2 : (1 + parts.lower) / 2;
}
