import type { MeasureResult } from '../../result/take-result.ts';
import { measuredOutcome } from '../find-measure.ts';

/** The hand whose figure is larger with its whole interval, as a fact; nothing when the hands may be alike. */
export function worseHand(
  measures: readonly MeasureResult[],
  id: string,
): { hand: 'R' | 'L' } | Record<never, never> {
  const right = measuredOutcome(measures, id, { hand: 'R' });
  const left = measuredOutcome(measures, id, { hand: 'L' });
  if (!right || !left) return {};
  if (right.low > left.high) return { hand: 'R' };
  return left.low > right.high ? { hand: 'L' } : {};
}
