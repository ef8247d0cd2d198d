import { directedFacts } from './figure-facts.ts';
import type { AdviceRule } from './finding.ts';
import { shortfalls } from './shortfall.ts';

/** The take as a whole is slower or faster than asked for. */
export const otherTempo: AdviceRule = (input) =>
  shortfalls(input, 'tempo-error').map(({ outcome, lost }) => ({
    code: 'other-tempo',
    facts: directedFacts(outcome, ['slower', 'faster']),
    strokes: outcome.pointsAt,
    lost,
  }));
