import { directedFacts } from './figure-facts.ts';
import type { AdviceRule } from './finding.ts';
import { shortfalls } from './shortfall.ts';

/** The tempo is another at the end than at the start. */
export const movingTempo: AdviceRule = (input) =>
  shortfalls(input, 'tempo-change').map(({ outcome, lost }) => ({
    code: 'moving-tempo',
    facts: directedFacts(outcome, ['falls', 'rises']),
    strokes: outcome.pointsAt,
    lost,
  }));
