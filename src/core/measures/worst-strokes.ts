import type { PlayedStroke } from './played-stroke.ts';

/** As many spots as one cares to listen to again. */
export const mostPointedAt = 12;

/** Indices (into the aligned strokes) of the strokes with the largest positive badness, worst first, at most 12. */
export function worstStrokes(
  strokes: readonly PlayedStroke[],
  badness: (stroke: PlayedStroke, index: number) => number,
): number[] {
  return strokes
    .map((stroke, index) => ({ at: stroke.stroke, bad: badness(stroke, index) }))
    .filter(({ bad }) => bad > 0)
    .sort((a, b) => b.bad - a.bad || a.at - b.at)
    .slice(0, mostPointedAt)
    .map(({ at }) => at);
}
