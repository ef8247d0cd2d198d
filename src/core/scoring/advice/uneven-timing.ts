import { measuredOutcome } from '../find-measure.ts';
import { figureFacts } from './figure-facts.ts';
import type { AdviceRule } from './finding.ts';
import { shortfalls } from './shortfall.ts';

/** Strokes scatter round the local tempo, with no one habit behind it. Figures are shares of a partial, %. */
export const unevenTiming: AdviceRule = (input) =>
  shortfalls(input, 'timing-spread-share').map(({ outcome, lost }) => {
    const inMs = measuredOutcome(input.measures, 'timing-spread');
    const facts = { ...figureFacts(outcome), ...(inMs ? { spreadMs: inMs.value } : {}) };
    return { code: 'timing-uneven', facts, strokes: outcome.pointsAt, lost };
  });
