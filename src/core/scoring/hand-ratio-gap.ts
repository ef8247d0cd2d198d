import type { MeasureResult, TakeResult } from '../result/take-result.ts';
import { findMeasure, measuredOutcome } from './find-measure.ts';

/**
 * The right hand's accent-to-tap ratio minus the left hand's, dB: positive when the right hand contrasts more. Being
 * a difference of ratios, it doesn't depend on where the microphone stands. The hands' errors are taken for
 * independent, so the interval's halves add in quadrature (law of propagation of uncertainty, JCGM 100:2008, 5.1.2).
 *
 * @example right 10.8 (9.7 … 11.9), left 7.6 (6.4 … 8.8) // 3.2 dB (1.57 … 4.83)
 */
export function handRatioGap(measures: readonly MeasureResult[], hands: TakeResult['hands']): MeasureResult {
  const base = { id: 'hand-ratio-gap', unit: 'dB', scope: {} };
  if (hands === 'not-told')
    return { ...base, outcome: { state: 'not-measurable', reason: { code: 'hands-not-told', facts: {} } } };
  const [right, left] = (['R', 'L'] as const).map((hand) =>
    measuredOutcome(measures, 'accent-to-tap-ratio', { hand }),
  );
  if (right && left) {
    const value = right.value - left.value;
    return {
      ...base,
      outcome: {
        state: 'measured',
        value,
        low: value - Math.hypot(right.value - right.low, left.high - left.value),
        high: value + Math.hypot(right.high - right.value, left.value - left.low),
        strokes: right.strokes + left.strokes,
        pointsAt: [...(value > 0 ? left : right).pointsAt],
      },
    };
  }
  const missing = (['R', 'L'] as const)
    .map((hand) => findMeasure(measures, 'accent-to-tap-ratio', { hand })?.outcome)
    .find((outcome) => outcome?.state === 'not-measurable');
  if (missing?.state === 'not-measurable') return { ...base, outcome: missing };
  return {
    ...base,
    outcome: { state: 'not-applicable', reason: { code: 'needs-accents-and-taps-in-both-hands', facts: {} } },
  };
}
