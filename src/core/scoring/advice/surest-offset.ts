import type { MeasureResult, Scope } from '../../result/take-result.ts';
import type { Measured } from '../find-measure.ts';

/** Of a measure's parts, the one furthest from 0 among those whose interval leaves 0 out. */
export function surestOffset(
  measures: readonly MeasureResult[],
  id: string,
  isPart: (scope: Scope) => boolean,
): { readonly scope: Scope; readonly outcome: Measured } | undefined {
  return measures
    .filter((m) => m.id === id && isPart(m.scope))
    .flatMap(({ scope, outcome }) =>
      outcome.state === 'measured' && outcome.low * outcome.high > 0 ? [{ scope, outcome }] : [],
    )
    .toSorted((a, b) => Math.abs(b.outcome.value) - Math.abs(a.outcome.value))[0];
}
