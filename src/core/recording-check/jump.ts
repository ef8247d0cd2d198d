/** A single step that the sound before and after it doesn't make: where sound is missing, or a crackle. */
export interface Jump {
  readonly at: number;
  readonly size: number;
}

/** A jump is so many times the usual step, and no smaller than this. */
export const jumpRatio = 10;
export const leastJump = 12 / 32768;
/** Within so many samples on both sides every other step must be smaller by this factor. */
const beside = 24;
const alone = 5;

/** Whether the step to sample `i` stands alone; a stroke's attack goes on with steps like its first. */
export function isJump(block: Float32Array, i: number, size: number): boolean {
  const most = size / alone;
  for (let k = 1; k <= beside; k++) {
    const after = block[i + k]! - block[i + k - 1]!;
    if (after > most || after < -most) return false;
    const earlier = block[i - k]! - block[i - k - 1]!;
    if (earlier > most || earlier < -most) return false;
  }
  return true;
}
