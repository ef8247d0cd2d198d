/** A stretch in which the signal stands still although there was sound before it and after. */
export interface StandStill {
  readonly at: number;
  readonly samples: number;
}

/** Shorter than this is no loss that matters, s. */
export const standStillSeconds = 0.0015;
const besideSeconds = 0.004;
/** Sound that can't stand still by chance: its root mean square in steps of 16 bits. */
const leastSteps = 2;

/**
 * The run of `samples` equal ones before sample `i`, or null where sound fades into it or out of it, as in a quiet
 * recording or behind a gate.
 */
export function standStillAt(
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
