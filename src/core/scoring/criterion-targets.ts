import type { Scope, TakeResult } from '../result/take-result.ts';
import type { Criterion } from './rubric.ts';
import type { Perfect } from './score-curve.ts';

/** What scoring needs to know of a line of the sheet. */
export type AskedLine = Pick<TakeResult['sheet']['lines'][number], 'ratioBand'>;

interface Target {
  readonly scope: Scope;
  readonly perfect: Perfect;
}

/**
 * Which results a criterion looks at, and each one's place of perfection: a line's own band goes before the rubric's.
 */
export function criterionTargets(criterion: Criterion, lines: readonly AskedLine[]): Target[] {
  const whole = [{ scope: {}, perfect: criterion.perfect }];
  if (criterion.measure !== 'accent-to-tap-ratio' || lines.every((line) => line.ratioBand === null))
    return whole;
  const perfects = lines.map(({ ratioBand }) =>
    ratioBand ? { min: ratioBand.minDb, max: ratioBand.maxDb } : criterion.perfect,
  );
  const first = perfects[0]!;
  const same = perfects.every((p) => JSON.stringify(p) === JSON.stringify(first));
  return same
    ? [{ scope: {}, perfect: first }]
    : perfects.map((perfect, line) => ({ scope: { line }, perfect }));
}
