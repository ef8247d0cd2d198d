import type { MeasureResult, Scope } from '../../../../src/core/result/take-result.ts';
import type { AdviceInput } from '../../../../src/core/scoring/advice/finding.ts';
import { steady } from '../../../../src/core/scoring/rubrics/steady.ts';

/** A measured result, `half` to each side of the value unless bounds are given. */
export function made(
  id: string,
  value: number,
  half: number,
  scope: Scope = {},
  pointsAt: number[] = [],
): MeasureResult {
  return {
    id,
    unit: '',
    scope,
    outcome: { state: 'measured', value, low: value - half, high: value + half, strokes: 72, pointsAt },
  };
}

/** Input for a rule of advice by the steady rubric, one line without a band of its own. */
export function input(
  measures: MeasureResult[],
  lines: AdviceInput['lines'] = [{ ratioBand: null }],
): AdviceInput {
  return { measures, lines, rubric: steady };
}
