/** A stretch in which the signal stands still although there was sound before it and after. */
export interface StandStill {
  readonly at: number;
  readonly samples: number;
}

/** Shorter than this is no loss that matters, s. */
const standStillSeconds = 0.0015;
const besideSeconds = 0.004;
/** Sound that can't stand still by chance: its root mean square in steps of 16 bits. */
const leastSteps = 2;

/** Adds the stretches that end between `from` and `to` to `found`. The block holds sound before and after these. */
export function standStillsIn(
  block: Float32Array,
  from: number,
  to: number,
  start: number,
  sampleRate: number,
  found: StandStill[],
): void {
  const fewest = Math.max(2, Math.round(standStillSeconds * sampleRate) + 1);
  // Of a run of `fewest` samples two that are so far apart are looked at in any case.
  const stride = Math.floor(fewest / 2);
  for (let k = 0; k + stride < to; k += stride) {
    const value = block[k]!;
    if (block[k + stride] !== value) continue;
    let first = k;
    while (first > 0 && block[first - 1] === value) first--;
    let end = k + 1;
    while (end < block.length && block[end] === value) end++;
    if (end - first >= fewest && end >= from && end < to) {
      const stretch = standStillAt(block, end, end - first, start, sampleRate);
      if (stretch !== null) found.push(stretch);
    }
    k += stride * Math.floor((end - 1 - k) / stride);
  }
}

/**
 * The run of `samples` equal ones before sample `i`, or null where sound fades into it or out of it, as in a quiet
 * recording or behind a gate.
 */
function standStillAt(
  block: Float32Array,
  i: number,
  samples: number,
  start: number,
  sampleRate: number,
): StandStill | null {
  const first = i - samples;
  const beside = Math.round(besideSeconds * sampleRate);
  const loud = (from: number) => {
    let sum = 0;
    let mean = 0;
    for (let k = 0; k < beside; k++) mean += (block[from + k] ?? 0) / beside;
    for (let k = 0; k < beside; k++) sum += ((block[from + k] ?? 0) - mean) ** 2;
    return Math.sqrt(sum / beside) * 32768 > leastSteps;
  };
  if (first - beside < 0 || !loud(first - beside + 1) || !loud(i)) return null;
  return { at: start + first, samples };
}
