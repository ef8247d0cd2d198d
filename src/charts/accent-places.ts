import type { TakeResult } from '../core/result/take-result.ts';
import { type GradedStroke, gradedStrokes } from './graded-strokes.ts';
import { mainNeighbours } from './main-neighbours.ts';

/** Where a stroke stands to the accents of its line. */
export type AccentPlace = 'accent' | 'after' | 'before' | 'between' | 'elsewhere';

/** Every graded stroke with its place; `between` is a tap with an accent on either side. */
export function accentPlaces(
  result: TakeResult,
): { readonly stroke: GradedStroke; readonly place: AccentPlace }[] {
  const neighbours = mainNeighbours(result);
  const { accent } = result.slots;
  return gradedStrokes(result).map((stroke) => {
    const { before, after } = neighbours.get(stroke.slot) ?? { before: null, after: null };
    const behind = before !== null && accent[before] === true;
    const ahead = after !== null && accent[after] === true;
    if (stroke.accent) return { stroke, place: 'accent' };
    if (behind && ahead) return { stroke, place: 'between' };
    return { stroke, place: behind ? 'after' : ahead ? 'before' : 'elsewhere' };
  });
}
