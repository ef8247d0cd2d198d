import { incompleteBeta } from './incomplete-beta.ts';

/**
 * Probability that Student's t with `degrees` > 0 degrees of freedom lies below t.
 *
 * @example studentTCdf(1, 1) // 0.75
 */
export function studentTCdf(t: number, degrees: number): number {
  if (!(degrees > 0)) throw new RangeError('degrees of freedom must be positive');
  const tail = incompleteBeta(degrees / 2, 0.5, degrees / (degrees + t * t)) / 2;
  return t < 0 ? tail : 1 - tail;
}
