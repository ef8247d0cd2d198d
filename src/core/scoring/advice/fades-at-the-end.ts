import { normalQuantile } from '../../stats/normal-quantile.ts';
import { type Measured, measuredOutcome } from '../find-measure.ts';
import type { AdviceRule } from './finding.ts';

/** Changes from start to end beyond which the end has given way: our judgement. */
const bounds = [
  { id: 'timing-spread-trend', sign: 1, most: 30 },
  { id: 'tap-level-trend', sign: 1, most: 1.5 },
  { id: 'ratio-trend', sign: -1, most: 1.5 },
] as const;

/** Three questions are asked at once: each interval is widened until all hold together (Bonferroni). */
const widening = normalQuantile(1 - 0.025 / bounds.length) / normalQuantile(0.975);

/** Points that giving way counts for: it comes before the fault it shows in. Our judgement. */
const lost = 18;

/** How far the nearer end of the widened interval lies beyond the bound, in the direction that is a fault. */
function beyond({ value, low, high }: Measured, sign: number, most: number): boolean {
  const near = sign > 0 ? value - (value - low) * widening : value + (high - value) * widening;
  return sign * value > most && sign * near > 0;
}

/** Timing loosens, taps rise or accents sink towards the end: a matter of rest, not of tempo. */
export const fadesAtTheEnd: AdviceRule = ({ measures }) => {
  const found = bounds.flatMap(({ id, sign, most }) => {
    const outcome = measuredOutcome(measures, id);
    return outcome && beyond(outcome, sign, most) ? [{ id, outcome }] : [];
  });
  const [first] = found;
  if (!first) return [];
  const signs = Object.fromEntries(found.map(({ id, outcome }) => [id, Math.abs(outcome.value)]));
  return [{ code: 'fades-at-the-end', facts: signs, strokes: first.outcome.pointsAt, lost }];
};
