import { normalQuantile } from './normal-quantile.ts';

/**
 * Standard error of a median of four or more independent values, free of their distribution:
 * (x₍ₙ₋c₊₁₎ − x₍c₎)/(2z), c = (n + 1)/2 − √n rounded, z the normal quantile of the binomial probability that the
 * two order statistics enclose the median. Price & Bonett 2002 (quoted from memory). RangeError under four values.
 * Example: medianStandardError([1, 2, 3, 4, 5]) is 4/(2 · 1.862732).
 */
export function medianStandardError(values: ArrayLike<number>): number {
  const n = values.length;
  if (n < 4) throw new RangeError('standard error of a median needs four values');
  const sorted = Float64Array.from(values).sort();
  const c = Math.max(1, Math.round((n + 1) / 2 - Math.sqrt(n)));
  let term = -n * Math.LN2;
  let tail = 0;
  for (let i = 0; i < c; i++) {
    tail += Math.exp(term);
    term += Math.log((n - i) / (i + 1));
  }
  return (sorted[n - c]! - sorted[c - 1]!) / (2 * -normalQuantile(tail));
}
