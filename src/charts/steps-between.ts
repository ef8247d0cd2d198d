import type { TakeResult } from '../core/result/take-result.ts';
import { type GradedStroke, gradedStrokes } from './graded-strokes.ts';
import { mainNeighbours } from './main-neighbours.ts';

/** The interval from one graded stroke to the next one written. */
export interface Step {
  readonly from: GradedStroke;
  readonly to: GradedStroke;
  /** Longer (plus) or shorter than even, ms. */
  readonly beyondEvenMs: number;
}

/** Intervals between strokes that stand right beside each other in the exercise, both played and timed. */
export function stepsBetween(result: TakeResult): Step[] {
  const neighbours = mainNeighbours(result);
  const strokes = gradedStrokes(result);
  const onSlot = new Map(strokes.map((stroke) => [stroke.slot, stroke]));
  return strokes.flatMap((to) => {
    const before = neighbours.get(to.slot)?.before ?? null;
    const from = before === null ? undefined : onSlot.get(before);
    if (from === undefined || from.deviationMs === null || to.deviationMs === null) return [];
    if (from.time >= to.time || runOf(result, from.slot) !== runOf(result, to.slot)) return [];
    return [{ from, to, beyondEvenMs: to.deviationMs - from.deviationMs }];
  });
}

/** Number of the graded run a slot was played in; −1 for none. */
export const runOf = ({ segments }: TakeResult, slot: number): number =>
  segments.findIndex((run) => run.state === 'graded' && run.firstSlot <= slot && slot <= run.lastSlot);

/** A step's length in words: '4.2 ms longer', '3.0 ms shorter', 'even'. */
export function stepWords(beyondEvenMs: number): string {
  const rounded = Math.abs(beyondEvenMs).toFixed(1);
  if (rounded === '0.0') return 'even';
  return `${rounded} ms ${beyondEvenMs > 0 ? 'longer' : 'shorter'}`;
}
