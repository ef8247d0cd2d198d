import { logGamma } from './log-gamma.ts';

/** Lower and upper regularised parts; each is computed without cancellation where it is the small one. */
interface GammaParts {
  readonly lower: number;
  readonly upper: number;
}

/** In place of a zero that would be divided by (Lentz 1976, quoted from memory). */
const tiny = 1e-300;

function series(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < 10_000 && term > sum * 1e-17; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return sum * Math.exp(-x + a * Math.log(x) - logGamma(a));
}

function continuedFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / tiny;
  let d = 1 / b;
  let h = d;
  for (let i = 1; i < 10_000; i++) {
    const an = -i * (i - a);
    b += 2;
    d = 1 / (an * d + b || tiny);
    c = b + an / c || tiny;
    const step = c * d;
    h *= step;
    if (Math.abs(step - 1) < 1e-16) break;
  }
  return h * Math.exp(-x + a * Math.log(x) - logGamma(a));
}

/**
 * Regularised incomplete gamma functions P(a, x) and Q(a, x) for a > 0, x ≥ 0: series below a + 1, Lentz's
 * continued fraction above (Abramowitz & Stegun 6.5.29, 6.5.31, quoted from memory).
 *
 * @example incompleteGamma(1, 2).upper // e⁻²
 */
export function incompleteGamma(a: number, x: number): GammaParts {
  if (x <= 0) return { lower: 0, upper: 1 };
  if (x < a + 1) {
    const lower = series(a, x);
    return { lower, upper: 1 - lower };
  }
  const upper = continuedFraction(a, x);
  return { lower: 1 - upper, upper };
}
