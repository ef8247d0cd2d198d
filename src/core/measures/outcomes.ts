import type { Outcome } from '../result/take-result.ts';

type Facts = Record<string, number | string>;

/** Outcome of a figure with its interval; the strokes it rests on are at least 1. */
export function measured(figure: {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly strokes: number;
  readonly pointsAt?: readonly number[];
}): Outcome {
  const { value, low, high, strokes, pointsAt = [] } = figure;
  return { state: 'measured', value, low, high, strokes, pointsAt: [...pointsAt] };
}

/** The take can't tell, though another recording could. */
export const notMeasurable = (code: string, facts: Facts = {}): Outcome => ({
  state: 'not-measurable',
  reason: { code, facts },
});

/** The exercise has no such thing. */
export const notApplicable = (code: string, facts: Facts = {}): Outcome => ({
  state: 'not-applicable',
  reason: { code, facts },
});

/** A figure and its bounds times a factor, everything else as it was. */
export function scaled(outcome: Outcome, factor: number): Outcome {
  if (outcome.state !== 'measured') return outcome;
  const { value, low, high } = outcome;
  return { ...outcome, value: value * factor, low: low * factor, high: high * factor };
}
