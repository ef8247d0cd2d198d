import { measuredOutcome } from '../find-measure.ts';
import { scoreOfDistance } from '../score-curve.ts';
import { figureFacts } from './figure-facts.ts';
import type { AdviceRule } from './finding.ts';
import { leakMayBe, sureClaims } from './sure-claims.ts';

/** Points of its curve, dB; nearly is our judgement. */
const points = { perfect: 0, secure: leakMayBe, nearly: 3 } as const;
/** It counts as much as one of the figures of dynamics does in the score. Our judgement. */
const share = 1 / 30;

/** The tap right after an accent keeps some of the accent. */
export const loudAfterAccent: AdviceRule = (input) => {
  const outcome = measuredOutcome(input.measures, 'after-accent-leak');
  if (!outcome || outcome.low <= leakMayBe || !sureClaims(input)('after-accent-leak')) return [];
  const lost = share * (100 - scoreOfDistance(outcome.value, points));
  return [{ code: 'taps-after-accents-loud', facts: figureFacts(outcome), strokes: outcome.pointsAt, lost }];
};
