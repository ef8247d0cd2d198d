import { figureFacts } from './figure-facts.ts';
import type { AdviceRule } from './finding.ts';
import { shortfalls } from './shortfall.ts';
import { worseHand } from './worse-hand.ts';

/** Accents differ in level from one to the next. */
export const unevenAccents: AdviceRule = (input) =>
  shortfalls(input, 'accent-spread').map(({ outcome, lost }) => ({
    code: 'accents-uneven',
    facts: { ...figureFacts(outcome), ...worseHand(input.measures, 'accent-spread') },
    strokes: outcome.pointsAt,
    lost,
  }));
