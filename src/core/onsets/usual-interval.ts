import type { Stroke } from './stroke.ts';

/** A gap in a row of strokes is this many usual intervals long; longer ones are rests. */
export const gapIntervals = { shortest: 1.6, longest: 4.4 };
/** Strokes either side from which the usual interval is taken. */
export const neighbours = 6;

/**
 * Median interval of the strokes round the i-th of a row of two or more in order of time, s; of an even number of them
 * the upper one in the middle.
 *
 * @example usualInterval([0, 0.2, 0.4, 0.8, 1].map((time) => ({ time })), 2) // 0.2, but for rounding
 */
export function usualInterval(strokes: readonly Pick<Stroke, 'time'>[], i: number): number {
  const from = Math.max(1, i - neighbours);
  const intervals: number[] = [];
  for (let k = from; k < Math.min(strokes.length, i + neighbours + 1); k++) {
    intervals.push(strokes[k]!.time - strokes[k - 1]!.time);
  }
  return intervals.sort((a, b) => a - b)[intervals.length >> 1]!;
}
