import type { PlayedStroke } from './played-stroke.ts';

/** As many spots as one cares to listen to again. Our judgement. */
export const mostPointedAt = 12;

/**
 * A size to put spots in order by: what differs in the last digits is alike, since these are the engine's, and its
 * order would be too.
 */
export const comparable = (size: number): number => Number(size.toPrecision(9));

/** Indices (into the aligned strokes) of the strokes with the largest positive badness, worst first, at most 12. */
export function worstStrokes(
  strokes: readonly PlayedStroke[],
  badness: (stroke: PlayedStroke, index: number) => number,
): number[] {
  return strokes
    .map((stroke, index) => ({ at: stroke.stroke, bad: comparable(badness(stroke, index)) }))
    .filter(({ bad }) => bad > 0)
    .sort((a, b) => b.bad - a.bad || a.at - b.at)
    .slice(0, mostPointedAt)
    .map(({ at }) => at);
}
