import { measuredOutcome } from '../find-measure.ts';
import { figureFacts } from './figure-facts.ts';
import type { AdviceRule } from './finding.ts';
import { shortfalls } from './shortfall.ts';

/** Accents stand less above the taps than the band asks: the remedy is softer taps, never louder accents. */
export const loudTaps: AdviceRule = (input) =>
  shortfalls(input, 'accent-to-tap-ratio').flatMap(({ scope, perfect, outcome, lost }) => {
    if (typeof perfect === 'number' || outcome.value >= perfect.min) return [];
    const loudest = measuredOutcome(input.measures, 'tap-ceiling', scope) ?? outcome;
    const facts = { ...figureFacts(outcome, scope), wantedDb: perfect.min };
    return [{ code: 'taps-too-loud', facts, strokes: loudest.pointsAt, lost }];
  });
