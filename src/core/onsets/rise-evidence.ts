/** Frames before a rise that it is held against: just before, and further back for rises in a steady or dying sound. */
const pasts: readonly number[] = [6, 16];
/** Frames from a rise on that are held against them. */
const lengths: readonly number[] = [2, 5, 12];
/**
 * No band may speak louder than this, so that one band's burst (a rattle, a thump) is no stroke by itself. Approached
 * smoothly: a flat top would hide where the evidence is best.
 */
const bandCap = 120;
/**
 * What lies further than this under what follows (power) is as good as silence: lossy codecs spread noise ahead of an
 * attack, and from their silence even that would be a rise.
 */
const depth = 6e-5;
const longest = 12;
/** Less than this isn't looked into. */
const leastRatio = 1.5;
/** Quantisation of a 16-bit file lies near −98 dB; what lies under it is no sound. */
export const silencePower = 1e-10;

/** Running sums of `values`, one longer: the sum of values[a … b) is sums[b] − sums[a]. */
export function prefixSums(values: Float32Array): Float64Array {
  const sums = new Float64Array(values.length + 1);
  let sum = 0;
  for (let i = 0; i < values.length; i++) {
    sum += values[i]!;
    sums[i + 1] = sum;
  }
  return sums;
}

/** Mean of the values from `from` up to but not including `to`; never 0. */
export function meanBetween(sums: Float64Array, from: number, to: number): number {
  return Math.max(0, sums[to]! - sums[from]!) / (to - from) + silencePower;
}

/**
 * Evidence of one band for a rise at the start of `frame`: log-likelihood ratio of two variances against one, nats, both
 * unknown, the best over the stretches before and after, bounded by the cap. `perFrame` counts independent samples.
 * With n₁ samples before, n₂ after and r the ratio of mean powers: ½·[n·ln((n₁ + n₂·r)/n) − n₂·ln r], n = n₁ + n₂.
 *
 * @example riseEvidence(prefixSums(new Float32Array(40).fill(1)), 8, 20) // 0: no rise
 */
export function riseEvidence(
  sums: Float64Array,
  perFrame: number,
  frame: number,
  windows: readonly number[] = lengths,
): number {
  // Nearly all frames fall or stand still against their nearest past, and end here.
  const floor = depth * meanBetween(sums, frame, frame + longest);
  const nearest = meanBetween(sums, frame - pasts[0]!, frame) + floor;
  let rises = false;
  for (const length of windows) {
    if (meanBetween(sums, frame, frame + length) >= leastRatio * nearest) rises = true;
  }
  if (!rises) return 0;
  let best = 0;
  for (const past of pasts) {
    const before = meanBetween(sums, frame - past, frame) + floor;
    const n1 = past * perFrame;
    for (const length of windows) {
      const ratio = meanBetween(sums, frame, frame + length) / before;
      if (ratio < leastRatio) continue;
      const n2 = length * perFrame;
      const n = n1 + n2;
      const value = 0.5 * (n * Math.log((n1 + n2 * ratio) / n) - n2 * Math.log(ratio));
      if (value > best) best = value;
    }
  }
  return (best * bandCap) / (best + bandCap);
}
