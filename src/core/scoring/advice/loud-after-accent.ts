import { measuredOutcome } from '../find-measure.ts';
import { scoreOfDistance } from '../score-curve.ts';
import { figureFacts } from './figure-facts.ts';
import type { AdviceRule } from './finding.ts';

/** How much louder the tap after an accent may be, dB: a step of about 1 dB is just audible (quoted from memory). */
const points = { perfect: 0, secure: 1, nearly: 3 } as const;
/** It counts as much as one of the figures of dynamics does in the score. Our judgement. */
const share = 1 / 30;

/** The tap right after an accent keeps some of the accent. */
export const loudAfterAccent: AdviceRule = ({ measures }) => {
  const outcome = measuredOutcome(measures, 'after-accent-leak');
  if (!outcome || outcome.low <= points.secure) return [];
  const lost = share * (100 - scoreOfDistance(outcome.value, points));
  return [{ code: 'taps-after-accents-loud', facts: figureFacts(outcome), strokes: outcome.pointsAt, lost }];
};
