import type { MeasureResult, Outcome, Scope } from '../result/take-result.ts';

export type Measured = Extract<Outcome, { state: 'measured' }>;

const keys = ['line', 'repeat', 'hand', 'partial', 'place'] as const;

/** Whether two scopes speak of the same part of a take. */
export function sameScope(a: Scope, b: Scope): boolean {
  return keys.every((key) => a[key] === b[key]);
}

/** The result of a measure for a scope, the whole take by default; undefined when there is none. */
export function findMeasure(
  measures: readonly MeasureResult[],
  id: string,
  scope: Scope = {},
): MeasureResult | undefined {
  return measures.find((m) => m.id === id && sameScope(m.scope, scope));
}

/** The outcome of a measure for a scope if it was measured, else undefined. */
export function measuredOutcome(
  measures: readonly MeasureResult[],
  id: string,
  scope: Scope = {},
): Measured | undefined {
  const outcome = findMeasure(measures, id, scope)?.outcome;
  return outcome?.state === 'measured' ? outcome : undefined;
}
