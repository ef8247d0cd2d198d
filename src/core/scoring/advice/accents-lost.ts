import { measuredOutcome } from '../find-measure.ts';
import { figureFacts } from './figure-facts.ts';
import type { AdviceRule } from './finding.ts';
import { accentsMayBeLost, sureClaims } from './sure-claims.ts';

/** Accents that sounded like taps, where it is beyond doubt that more than a few are gone. */
export const accentsLost: AdviceRule = (input) => {
  const outcome = measuredOutcome(input.measures, 'lost-accents');
  if (!outcome || outcome.low <= accentsMayBeLost || !sureClaims(input)('lost-accents')) return [];
  const facts = { ...figureFacts(outcome), accents: outcome.strokes };
  return [{ code: 'accents-lost', facts, strokes: outcome.pointsAt, lost: outcome.value }];
};
