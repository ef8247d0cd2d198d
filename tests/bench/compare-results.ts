import { measureName } from '../../src/core/result/names.ts';
import type { MeasureResult, Outcome, TakeResult } from '../../src/core/result/take-result.ts';
import { findMeasure } from '../../src/core/scoring/find-measure.ts';

type Measured = Extract<Outcome, { state: 'measured' }>;

/** One figure of a take in two recordings of it. */
export interface FigurePair {
  readonly id: string;
  readonly scope: MeasureResult['scope'];
  readonly unit: string;
  readonly clean: Measured;
  readonly other: Measured;
}

/** How the grade of one recording differs from that of a clean one of the same playing. */
export interface Comparison {
  readonly gradable: boolean;
  /** Points by dimension and `overall`; NaN where only one recording has the score. */
  readonly points: Readonly<Record<string, number>>;
  /** Measured in both. */
  readonly figures: readonly FigurePair[];
  /**
   * Measured in the clean recording and not measurable here: names of measures with their reasons. A measure that
   * doesn't apply to this recording, such as one of playing without a click where there is one, isn't refused, nor is a
   * single repeat, which a result leaves out where it is too short for a figure.
   */
  readonly refused: readonly string[];
  /** Strokes of the clean recording's slots with none here, and the other way round. */
  readonly lost: number;
  readonly gained: number;
}

const codeOf = (outcome: Outcome | undefined) =>
  outcome === undefined || outcome.state === 'measured' ? 'not there' : outcome.reason.code;

/** Holds the result of a recording against that of a clean one. */
export function compareResults(clean: TakeResult, other: TakeResult): Comparison {
  const scores = ({ scores }: TakeResult): Record<string, number> =>
    scores === null
      ? {}
      : {
          overall: scores.overall.score,
          ...Object.fromEntries(scores.dimensions.map(({ id, score }) => [id, score.score])),
        };
  const [a, b] = [scores(clean), scores(other)];
  const ids = [...new Set([...Object.keys(a), ...Object.keys(b)])];
  const figures: FigurePair[] = [];
  const refused: string[] = [];
  for (const { id, scope, unit, outcome } of clean.measures) {
    if (outcome.state !== 'measured') continue;
    const found = findMeasure(other.measures, id, scope)?.outcome;
    if (found?.state === 'measured') figures.push({ id, scope, unit, clean: outcome, other: found });
    else if (found?.state !== 'not-applicable' && scope.repeat === undefined)
      refused.push(`${measureName(id)} ${JSON.stringify(scope)}: ${codeOf(found)}`);
  }
  const played = ({ slots }: TakeResult, slot: number) => slots.state[slot] === 'played';
  const slots = [...clean.slots.state.keys()];
  return {
    gradable: other.grading.state === 'graded',
    points: Object.fromEntries(ids.map((id) => [id, (b[id] ?? Number.NaN) - (a[id] ?? Number.NaN)])),
    figures,
    refused,
    lost: slots.filter((slot) => played(clean, slot) && !played(other, slot)).length,
    gained: slots.filter((slot) => !played(clean, slot) && played(other, slot)).length,
  };
}

/** How far a figure moved in halves of the clean recording's interval: within ±1 it lies inside. */
export function movedBy({ clean, other }: FigurePair): number {
  const way = other.value - clean.value;
  const half = way > 0 ? clean.high - clean.value : clean.value - clean.low;
  return Math.abs(way) < 1e-9 ? 0 : way / half;
}
