import { incompleteBeta } from './incomplete-beta.ts';

/**
 * Chance that a value of the F distribution with `between` and `within` degrees of freedom exceeds f ≥ 0
 * (Abramowitz & Stegun 26.6.2, quoted from memory).
 *
 * @example fTail(1, 1, 4) // 0.3739, the two-sided tail of Student's t at 1 with 4 degrees of freedom
 */
export function fTail(f: number, between: number, within: number): number {
  if (f <= 0) return 1;
  return incompleteBeta(within / 2, between / 2, within / (within + between * f));
}
