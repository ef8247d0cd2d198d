import { figureFacts } from './figure-facts.ts';
import type { AdviceRule } from './finding.ts';
import { shortfalls } from './shortfall.ts';
import { worseHand } from './worse-hand.ts';

/** Taps differ in level from one to the next. */
export const unevenTaps: AdviceRule = (input) =>
  shortfalls(input, 'tap-spread').map(({ outcome, lost }) => ({
    code: 'taps-uneven',
    facts: { ...figureFacts(outcome), ...worseHand(input.measures, 'tap-spread') },
    strokes: outcome.pointsAt,
    lost,
  }));
