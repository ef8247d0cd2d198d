import { describe, expect, it } from 'vitest';
import type { MeasureResult, Outcome } from '../../../src/core/result/take-result.ts';
import { handRatioGap } from '../../../src/core/scoring/hand-ratio-gap.ts';

const ratio = (hand: 'R' | 'L', outcome: Outcome): MeasureResult => ({
  id: 'accent-to-tap-ratio',
  unit: 'dB',
  scope: { hand },
  outcome,
});
const measured = (value: number, low: number, high: number, pointsAt: number[]): Outcome => ({
  state: 'measured',
  value,
  low,
  high,
  strokes: 36,
  pointsAt,
});
const refused: Outcome = { state: 'not-measurable', reason: { code: 'clipped', facts: { strokes: 9 } } };

const gap = (measures: MeasureResult[]) => handRatioGap(measures, 'as-written');

describe('handRatioGap', () => {
  it('gives the worked example and points at the hand that contrasts less', () => {
    const { outcome } = gap([
      ratio('R', measured(10.8, 9.7, 11.9, [1])),
      ratio('L', measured(7.6, 6.4, 8.8, [2])),
    ]);
    if (outcome.state !== 'measured') throw new Error(outcome.state);
    expect(gap([])).toMatchObject({ id: 'hand-ratio-gap', unit: 'dB', scope: {} });
    expect(outcome.value).toBeCloseTo(3.2, 9);
    expect(outcome.low).toBeCloseTo(1.572, 3); // sqrt(1.1² + 1.2²) = 1.628
    expect(outcome.high).toBeCloseTo(4.828, 3);
    expect(outcome).toMatchObject({ strokes: 72, pointsAt: [2] });
  });

  it('points at the right hand where that contrasts less', () => {
    const hands = [ratio('R', measured(7, 6, 8, [1])), ratio('L', measured(9, 8, 10, [2]))];
    expect(gap(hands).outcome).toMatchObject({ value: -2, pointsAt: [1] });
  });

  it('passes on why a hand could not be measured', () => {
    expect(gap([ratio('R', measured(10, 9, 11, [])), ratio('L', refused)]).outcome).toEqual(refused);
  });

  it('does not apply when a hand has no ratio', () => {
    expect(gap([ratio('R', measured(10, 9, 11, []))]).outcome.state).toBe('not-applicable');
    expect(gap([]).outcome).toEqual({
      state: 'not-applicable',
      reason: { code: 'needs-accents-and-taps-in-both-hands', facts: {} },
    });
  });

  it('compares no hands that are not told', () => {
    const both = [ratio('R', measured(10, 9, 11, [])), ratio('L', measured(9, 8, 10, []))];
    expect(handRatioGap(both, 'not-told').outcome).toEqual({
      state: 'not-measurable',
      reason: { code: 'hands-not-told', facts: {} },
    });
  });
});
