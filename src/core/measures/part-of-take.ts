import type { Slot } from '../exercise/slot.ts';
import type { Scope } from '../result/take-result.ts';
import { leastShareTold } from './hands-told.ts';
import { inScopes, type Place } from './in-scopes.ts';
import type { Performance } from './performance.ts';
import type { PlayedStroke } from './played-stroke.ts';
import { fitTimingModel } from './timing-model.ts';

/** Where a slot stands in a take, with the hand that is written there. */
const placeOfSlot = (slot: Slot): Place => slot;

/** Where a graded stroke stands in a take, with the hand that played it. */
export const placeOfStroke = ({ slot, hand }: PlayedStroke): Place => ({
  line: slot.line,
  repeat: slot.repeat,
  partial: slot.partial,
  hand,
});

/**
 * Lines, repeats, hands or partials of a take as takes of their own: their strokes and the slots that ask for them. A
 * line has habits and a local tempo of its own; the other parts have none, since the model needs neighbours. The scopes
 * name the same things.
 *
 * @example partsOfTake(performance, [{ line: 1 }])[0]!.strokes.length // strokes of the second line
 */
export function partsOfTake(take: Performance, scopes: readonly Scope[]): Performance[] {
  const strokesOf = inScopes(scopes, take.strokes, placeOfStroke);
  const askedOf = inScopes(scopes, take.asked, placeOfSlot);
  return scopes.map((scope, i) => {
    const strokes = strokesOf[i]!;
    const told = strokes.filter((stroke) => stroke.hand !== null).length;
    const wholeLine = Object.keys(scope).every((key) => key === 'line');
    return {
      ...take,
      strokes,
      asked: askedOf[i]!,
      hands: told >= leastShareTold * strokes.length ? take.hands : 'not-told',
      timing: wholeLine ? fitTimingModel(strokes) : null,
    };
  });
}
