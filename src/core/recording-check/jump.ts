import { fineStep } from '../signal/coarse-samples.ts';

/** A single step that the sound before and after it doesn't make: where sound is missing, or a crackle. */
export interface Jump {
  readonly at: number;
  readonly size: number;
}

/** A jump is so many times the usual step, and no smaller than so many steps of those that samples are stored in. */
const jumpRatio = 10;
const leastJumpSteps = 12;
/** Samples over which the usual step is averaged. */
const usualOver = 32;
/** Within so many samples on both sides every other step must be smaller by this factor. */
const beside = 24;
const alone = 5;
/** Samples whose steps are first looked at together; two such groups lie within `beside`. */
const group = 8;

/**
 * Adds the jumps to samples `from` to `to` to `found`. Groups of steps are compared first: a step that stands alone
 * makes its group's power stand out from both neighbours', which few others do.
 */
export function jumpsIn(
  block: Float32Array,
  from: number,
  to: number,
  start: number,
  found: Jump[],
  step = fineStep,
): void {
  const leastJump = leastJumpSteps * step;
  const groups = Math.ceil((to - from) / group) + 2;
  const power = new Float64Array(groups);
  let i = from - group;
  let before = block[i - 1]!;
  for (let g = 0; g < groups; g++) {
    let sum = 0;
    for (const end = i + group; i < end; i++) {
      const x = block[i]!;
      sum += (x - before) * (x - before);
      before = x;
    }
    power[g] = sum;
  }
  const least = leastJump * leastJump;
  for (let g = 1; g + 1 < groups; g++) {
    const own = power[g]!;
    const most = (group / (alone * alone)) * own;
    if (own <= least || power[g - 1]! > most || power[g + 1]! > most) continue;
    const first = from + (g - 1) * group;
    for (let k = first; k < Math.min(to, first + group); k++) {
      const size = Math.abs(block[k]! - block[k - 1]!);
      if (size > leastJump && isJump(block, k, size)) found.push({ at: start + k, size });
    }
  }
}

/**
 * Whether the step to sample `i` stands alone amid sound; a stroke's attack goes on with steps like its first, and from
 * silence or to it sound begins or is cut off, and no time is lost.
 */
function isJump(block: Float32Array, i: number, size: number): boolean {
  const most = size / alone;
  let moves = false;
  for (let k = 1; k <= beside; k++) {
    const after = block[i + k]! - block[i + k - 1]!;
    if (after > most || after < -most) return false;
    if (after !== 0) moves = true;
    const earlier = block[i - k]! - block[i - k - 1]!;
    if (earlier > most || earlier < -most) return false;
  }
  let usual = 0;
  for (let k = 1; k <= usualOver; k++) usual += Math.abs(block[i - k]! - block[i - k - 1]!) / usualOver;
  return moves && usual > 0 && size > jumpRatio * usual;
}
