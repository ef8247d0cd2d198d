import type { Slot } from '../exercise/slot.ts';
import type { Scope } from '../result/take-result.ts';
import { leastShareTold } from './hands-told.ts';
import type { Performance } from './performance.ts';
import type { PlayedStroke } from './played-stroke.ts';
import { fitTimingModel } from './timing-model.ts';

const within = (scope: Scope, { line, repeat, partial }: Slot): boolean =>
  (scope.line === undefined || scope.line === line) &&
  (scope.repeat === undefined || scope.repeat === repeat) &&
  (scope.partial === undefined || scope.partial === partial);

/** Whether a graded stroke belongs to a part of the take. */
export const belongsTo = (scope: Scope, { slot, hand }: PlayedStroke): boolean =>
  within(scope, slot) && (scope.hand === undefined || scope.hand === hand);

/**
 * A line, repeat, hand or partial of a take as a take of its own: its strokes and the slots that ask for them. A line
 * has habits and a local tempo of its own; the other parts have none, since the model needs neighbours.
 *
 * @example partOfTake(performance, { line: 1 }).strokes.length // strokes of the second line
 */
export function partOfTake(take: Performance, scope: Scope): Performance {
  const strokes = take.strokes.filter((stroke) => belongsTo(scope, stroke));
  const asked = take.asked.filter(
    (slot) => within(scope, slot) && (scope.hand === undefined || slot.hand === scope.hand),
  );
  const told = strokes.filter((stroke) => stroke.hand !== null).length;
  const wholeLine = Object.keys(scope).every((key) => key === 'line');
  return {
    ...take,
    strokes,
    asked,
    hands: told >= leastShareTold * strokes.length ? take.hands : 'not-told',
    timing: wholeLine ? fitTimingModel(strokes) : null,
  };
}
