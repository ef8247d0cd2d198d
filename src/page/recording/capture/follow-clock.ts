import type { CapturedBlock } from './captured-block.ts';

/** How a recording runs beside the clock on the wall. */
export interface ClockFollowed {
  /** The least lateness of the block's arrival in the window so far, and in the one before, s. */
  readonly least: number;
  readonly before: number | null;
  readonly windowEnd: number;
  /** Where the sound fell behind for good: s of the recording, and by how much. */
  readonly stalls: readonly { readonly at: number; readonly seconds: number }[];
}

export const clockAtStart: ClockFollowed = {
  least: Number.POSITIVE_INFINITY,
  before: null,
  windowEnd: 0,
  stalls: [],
};

/** Handing over is late by chance, so only the quickest of a window counts, s. */
const windowSeconds = 1;
/**
 * A step by more than this from one window to the next is a stall, s: clocks part by 0.1 ms in a second at most, and
 * a busy device hands a block over 20 ms late at times. Our judgement.
 */
const stallSeconds = 0.04;

/**
 * Follows the wall clock block by block. A device too busy to keep up loses input without the audio clock's telling;
 * the wall clock then goes on and the recording doesn't. `place` is the block's frame in the recording.
 */
export function followClock(
  followed: ClockFollowed,
  { samples, clockMs }: CapturedBlock,
  place: number,
  sampleRate: number,
): ClockFollowed {
  const at = (place + samples.length) / sampleRate;
  const late = clockMs / 1000 - at;
  const { least, before, windowEnd, stalls } = followed;
  if (at < windowEnd) return { ...followed, least: Math.min(least, late) };
  const step = before === null || !Number.isFinite(least) ? 0 : least - before;
  return {
    least: late,
    before: Number.isFinite(least) ? least : before,
    windowEnd: at + windowSeconds,
    stalls:
      step > stallSeconds ? [...stalls, { at: Math.max(0, at - 2 * windowSeconds), seconds: step }] : stalls,
  };
}
