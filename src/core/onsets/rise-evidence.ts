/** Frames before a rise that it is held against: further back for rises in a steady or dying sound, and just before. */
const pasts = [16, 6] as const;
const nearest = pasts[1];
/** Frames from a rise on that are held against them, the longest first. */
const lengths = [12, 5, 2] as const;
const longest = lengths[0];
/** Frames that the evidence of a frame looks ahead. */
export const longestAfter = longest;
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
 * unknown, the best over the stretches before and after, bounded by the cap. `perFrame` counts independent samples;
 * `windows` has the longest first. With n₁ samples before, n₂ after and r the ratio of mean powers:
 * ½·[n·ln((n₁ + n₂·r)/n) − n₂·ln r], n = n₁ + n₂.
 *
 * @example riseEvidence(prefixSums(new Float32Array(40).fill(1)), 8, 20) // 0: no rise
 */
export function riseEvidence(
  sums: Float64Array,
  perFrame: number,
  frame: number,
  windows: readonly number[] = lengths,
): number {
  const start = sums[frame]!;
  const floor = depth * ((sums[frame + longest]! - start) / longest + silencePower);
  // Nearly all frames fall or stand still against their nearest past, and end here.
  const before = (start - sums[frame - nearest]!) / nearest + silencePower + floor;
  const least = leastRatio * before - silencePower;
  for (let i = 0; i < windows.length; i++) {
    const length = windows[i]!;
    if (sums[frame + length]! - start >= least * length) return bestOf(sums, perFrame, frame, windows, floor);
  }
  return 0;
}

/**
 * Adds the evidence of one band at each frame of [from, to) to `evidence`. Written out for speed: of an hour's millions of
 * frames nearly all end at the first comparison.
 */
export function addRiseEvidence(
  sums: Float64Array,
  perFrame: number,
  from: number,
  to: number,
  evidence: Float32Array | Float64Array,
): void {
  const [long, middle, short] = lengths;
  const past = nearest;
  const silence = leastRatio * silencePower * (1 + depth) - silencePower;
  const [perPast, perLong] = [leastRatio / past, (leastRatio * depth) / long];
  for (let frame = from; frame < to; frame++) {
    const start = sums[frame]!;
    const follows = sums[frame + long]! - start;
    const least = (start - sums[frame - past]!) * perPast + follows * perLong + silence;
    if (
      follows >= least * long ||
      sums[frame + middle]! - start >= least * middle ||
      sums[frame + short]! - start >= least * short
    )
      evidence[frame]! += riseEvidence(sums, perFrame, frame);
  }
}

/** A stretch no longer than another and no better is passed over: more of the same says more. */
function bestOf(
  sums: Float64Array,
  perFrame: number,
  frame: number,
  windows: readonly number[],
  floor: number,
): number {
  let best = 0;
  let leastBefore = Number.POSITIVE_INFINITY;
  for (let p = 0; p < pasts.length; p++) {
    const past = pasts[p]!;
    const before = meanBetween(sums, frame - past, frame) + floor;
    if (before >= leastBefore) continue;
    leastBefore = before;
    const n1 = past * perFrame;
    let mostRatio = leastRatio;
    for (let w = 0; w < windows.length; w++) {
      const length = windows[w]!;
      const ratio = meanBetween(sums, frame, frame + length) / before;
      if (ratio <= mostRatio) continue;
      mostRatio = ratio;
      const n2 = length * perFrame;
      const n = n1 + n2;
      const value = 0.5 * (n * Math.log((n1 + n2 * ratio) / n) - n2 * Math.log(ratio));
      if (value > best) best = value;
    }
  }
  return (best * bandCap) / (best + bandCap);
}
