import { measuredOutcome } from '../find-measure.ts';
import { figureFacts } from './figure-facts.ts';
import type { AdviceRule } from './finding.ts';

/** Share of accents that may be lost before it is said, %: our judgement. */
const mayBeLost = 2;

/** Accents that sounded like taps, where it is beyond doubt that more than a few are gone. */
export const accentsLost: AdviceRule = ({ measures }) => {
  const outcome = measuredOutcome(measures, 'lost-accents');
  if (!outcome || outcome.low <= mayBeLost) return [];
  const facts = { ...figureFacts(outcome), accents: outcome.strokes };
  return [{ code: 'accents-lost', facts, strokes: outcome.pointsAt, lost: outcome.value }];
};
