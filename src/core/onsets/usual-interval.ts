import type { Stroke } from './stroke.ts';

/** Strokes either side from which the usual interval is taken. */
export const neighbours = 6;

/** Median interval of the strokes round the i-th of a row in order of time, s. */
export function usualInterval(strokes: readonly Pick<Stroke, 'time'>[], i: number): number {
  const from = Math.max(1, i - neighbours);
  const intervals: number[] = [];
  for (let k = from; k < Math.min(strokes.length, i + neighbours + 1); k++) {
    intervals.push(strokes[k]!.time - strokes[k - 1]!.time);
  }
  return intervals.sort((a, b) => a - b)[intervals.length >> 1]!;
}
