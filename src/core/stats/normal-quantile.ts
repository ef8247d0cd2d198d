import { normalCdf } from './normal-cdf.ts';

/**
 * Standard normal quantile for 0 < p < 1; RangeError outside.
 * Starts from the rational formula 26.2.23 of Abramowitz & Stegun (quoted from memory) and refines it by
 * Halley's method on the distribution function.
 *
 * @example normalQuantile(0.975) // 1.959964
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError('probability outside 0 … 1');
  if (p > 0.5) return -normalQuantile(1 - p);
  const t = Math.sqrt(-2 * Math.log(p));
  let z =
    (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308))) - t;
  for (let i = 0; i < 3; i++) {
    const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
    const step = (normalCdf(z) - p) / density;
    z -= step / (1 + (z * step) / 2);
  }
  return z;
}
