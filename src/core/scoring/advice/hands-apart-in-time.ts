import { measuredOutcome } from '../find-measure.ts';
import { directedFacts } from './figure-facts.ts';
import type { AdviceRule } from './finding.ts';
import { shortfalls } from './shortfall.ts';

/** One hand lands later than the other; left minus right, so a positive figure means the left hand is later. */
export const handsApartInTime: AdviceRule = (input) =>
  shortfalls(input, 'hand-offset-share').flatMap(({ lost, outcome }) => {
    const inMs = measuredOutcome(input.measures, 'hand-offset');
    if (!inMs) return [];
    const { direction: laterHand, ...figure } = directedFacts(inMs, ['R', 'L']);
    return [
      { code: 'hands-apart-in-time', facts: { ...figure, laterHand }, strokes: outcome.pointsAt, lost },
    ];
  });
