import type { MeasureResult, Scope } from '../result/take-result.ts';
import type { Measure } from './measure.ts';
import { partsOfTake } from './part-of-take.ts';
import type { Performance } from './performance.ts';
import { type PartKind, scopesOf } from './scopes.ts';

/** A part of a take as a take of its own. */
interface TakePart {
  readonly kind: PartKind;
  readonly scope: Scope;
  readonly take: Performance;
}

/** Every line, repeat, hand and partial of a take. */
export function partsOf(take: Performance): TakePart[] {
  return (['line', 'repeat', 'hand', 'partial'] as const).flatMap((kind) => {
    const scopes = scopesOf(take, kind);
    return partsOfTake(take, scopes).map((part, i) => ({ kind, scope: scopes[i]!, take: part }));
  });
}

const kindOf = (scope: Scope) => Object.keys(scope).sort().join('+');

/**
 * A measure for a take and for its parts: the whole take first, the parts that the measure itself sees in it, each
 * line, then the kinds of parts that the measure names. Parts that it doesn't apply to are left out, and of repeats
 * those that are too short for it.
 */
export function measureWithParts(
  measure: Measure,
  take: Performance,
  parts: readonly TakePart[],
): MeasureResult[] {
  const own = measure.compute(take);
  const ownKinds = new Set(own.map(({ scope }) => kindOf(scope)));
  const others = parts.flatMap(({ kind, scope, take: part }): MeasureResult[] => {
    if (ownKinds.has(kind) || (kind !== 'line' && !measure.alsoBy?.includes(kind))) return [];
    const [whole] = measure.compute(part);
    const state = whole!.outcome.state;
    const kept = kind === 'repeat' ? state === 'measured' : state !== 'not-applicable';
    return kept ? [{ ...whole!, scope }] : [];
  });
  return [...own, ...others];
}
