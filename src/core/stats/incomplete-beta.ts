import { logGamma } from './log-gamma.ts';

/** In place of a zero that would be divided by (Lentz 1976, quoted from memory). */
const tiny = 1e-300;

function continuedFraction(a: number, b: number, x: number): number {
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1) || tiny);
  let h = d;
  for (let m = 1; m < 10_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / (1 + even * d || tiny);
    c = 1 + even / c || tiny;
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + odd * d || tiny);
    c = 1 + odd / c || tiny;
    const step = d * c;
    h *= step;
    if (Math.abs(step - 1) < 1e-16) break;
  }
  return h;
}

/**
 * Regularised incomplete beta function Iₓ(a, b) for a, b > 0 and 0 ≤ x ≤ 1 by its continued fraction
 * (Abramowitz & Stegun 26.5.8, quoted from memory).
 *
 * @example incompleteBeta(1, 1, 0.3) // 0.3
 */
export function incompleteBeta(a: number, b: number, x: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return x < (a + 1) / (a + b + 2)
    ? (front * continuedFraction(a, b, x)) / a
    : 1 - (front * continuedFraction(b, a, 1 - x)) / b;
}
