import { measuredOutcome } from '../find-measure.ts';
import type { AdviceRule } from './finding.ts';
import { sureClaims } from './sure-claims.ts';

/** Changes from start to end beyond which the end has given way: our judgement. */
const bounds = [
  { id: 'timing-spread-trend', sign: 1, most: 30 },
  { id: 'tap-level-trend', sign: 1, most: 1.5 },
  { id: 'ratio-trend', sign: -1, most: 1.5 },
] as const;

/** Points that giving way counts for: it comes before the fault it shows in. Our judgement. */
const lost = 18;

/**
 * Timing loosens, taps rise or accents sink towards the end: a matter of rest, not of tempo. Not said of lines that
 * were asked for at several tempos, where start and end differ in tempo too.
 */
export const fadesAtTheEnd: AdviceRule = (input) => {
  if (new Set(input.lines.map(({ bpm }) => bpm)).size > 1) return [];
  const isSure = sureClaims(input);
  const found = bounds.flatMap(({ id, sign, most }) => {
    const outcome = measuredOutcome(input.measures, id);
    if (!outcome || sign * outcome.value <= most || outcome.low * outcome.high <= 0) return [];
    return isSure(id) ? [{ id, outcome }] : [];
  });
  const [first] = found;
  if (!first) return [];
  const signs = Object.fromEntries(found.map(({ id, outcome }) => [id, Math.abs(outcome.value)]));
  return [{ code: 'fades-at-the-end', facts: signs, strokes: first.outcome.pointsAt, lost }];
};
