import { measuredOutcome } from '../find-measure.ts';
import { directedFacts } from './figure-facts.ts';
import type { AdviceRule } from './finding.ts';
import { shortfalls } from './shortfall.ts';

/** One hand's accents stand less above its taps than the other's. */
export const handsApartInRatio: AdviceRule = (input) =>
  shortfalls(input, 'hand-ratio-gap').flatMap(({ outcome, lost }) => {
    const right = measuredOutcome(input.measures, 'accent-to-tap-ratio', { hand: 'R' });
    const left = measuredOutcome(input.measures, 'accent-to-tap-ratio', { hand: 'L' });
    if (!right || !left) return [];
    const { direction: flatterHand, ...figure } = directedFacts(outcome, ['R', 'L']);
    const facts = { ...figure, flatterHand, rightDb: right.value, leftDb: left.value };
    return [{ code: 'hands-apart-in-ratio', facts, strokes: outcome.pointsAt, lost }];
  });
