import { fineStep } from '../signal/coarse-samples.ts';

/** A stretch that is, to the last bit, what came shortly before: no sound through the air ever is. */
export interface RepeatedBlock {
  readonly at: number;
  readonly samples: number;
  /** By how many samples it comes later. */
  readonly lag: number;
}

/** Looks for blocks that were heard before. */
interface Anchors {
  look(block: Float32Array, from: number, to: number, start: number, found: RepeatedBlock[]): void;
}

/** Blocks of sound systems last from 2 to 200 ms; a shorter lag is a tone's own period. */
const lagSeconds = { least: 0.002, most: 0.2 };
/** So many equal samples make a repeated block. */
const equalSamples = 48;
/** The sound compared must be more than the last bit's flicker, in steps that it is stored in (difference of extremes). */
const leastSwingSteps = 8;
/** A soft tone may be alike by chance where it goes through few steps: so many samples differ from the one before. */
const fewestChanges = 24;
/** Places that are remembered, 2 to this power. */
const tableBits = 12;

/**
 * Remembers where samples of a certain low-order pattern stood, one in 64, and compares the surroundings of two that
 * look alike.
 */
export function anchorsOf(sampleRate: number, step = fineStep): Anchors {
  const least = Math.round(lagSeconds.least * sampleRate);
  const most = Math.round(lagSeconds.most * sampleRate);
  const places = new Float64Array(2 ** tableBits).fill(Number.NEGATIVE_INFINITY);
  let done = Number.NEGATIVE_INFINITY;
  return {
    look(block, from, to, start, found) {
      for (let i = from; i < to; i++) {
        // Samples of 16 bits and of more: the pattern comes from a scaling that keeps what is below.
        const value = (block[i]! * 8388608) | 0;
        if (Math.imul(value, 0x9e3779b1) >>> 26 !== 0) continue;
        const next = (block[i + 1]! * 8388608) | 0;
        const last = (block[i - 1]! * 8388608) | 0;
        if (value === next) continue;
        const mixed = Math.imul(value ^ Math.imul(next, 31) ^ Math.imul(last, 961), 0x85ebca6b);
        const slot = mixed >>> (32 - tableBits);
        const place = start + i;
        const lag = place - places[slot]!;
        places[slot] = place;
        if (lag < least || lag > most || place < done) continue;
        const equal = equalRun(block, i, lag, leastSwingSteps * step);
        if (equal === null) continue;
        done = start + equal.to;
        found.push({ at: start + equal.from, samples: equal.to - equal.from, lag });
      }
    },
  };
}

/** How far samples round `i` equal those `lag` earlier, or null where that is too little to mean anything. */
function equalRun(
  block: Float32Array,
  i: number,
  lag: number,
  leastSwing: number,
): { from: number; to: number } | null {
  let from = i;
  while (from - lag > 0 && block[from - 1] === block[from - 1 - lag]) from--;
  let to = i + 1;
  while (to < block.length && block[to] === block[to - lag]) to++;
  if (to - from < equalSamples) return null;
  let low = block[from]!;
  let high = low;
  let changes = 0;
  for (let k = from; k < to; k++) {
    if (k > from && block[k] !== block[k - 1]) changes++;
    low = Math.min(low, block[k]!);
    high = Math.max(high, block[k]!);
  }
  return high - low < leastSwing || changes < fewestChanges ? null : { from, to };
}
