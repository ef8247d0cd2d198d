import type { MeasureResult, Reason, TakeResult } from '../result/take-result.ts';
import { geometricMeanScore, meanScore } from './combine-scores.ts';
import { type AskedLine, criterionTargets } from './criterion-targets.ts';
import { findMeasure, type Measured } from './find-measure.ts';
import { pointsOf } from './measure-points.ts';
import type { Rubric } from './rubric.ts';
import { rubrics } from './rubrics/index.ts';
import { scoreOfValue } from './score-curve.ts';

export type Scores = NonNullable<TakeResult['scores']>;
type Dimension = Scores['dimensions'][number];
type ScoredMeasure = Dimension['measures'][number];

/** Scores and what had to be left out of them, or why there is no score. */
export type ScoredTake =
  | { readonly state: 'scored'; readonly scores: Scores; readonly leftOut: readonly Reason[] }
  | { readonly state: 'not-scored'; readonly reason: Reason };

/** Below this a score would rest on too few strokes to mean anything: eight beats of triplets. Our judgement. */
const fewestStrokes = 24;

/** Least share of the applicable dimensions' weight that must be there for an overall score. Our judgement. */
const leastCoverage = 0.5;

/**
 * Scores a take's measures by a rubric. A dimension is the weighted mean of its measures' scores, the overall score the
 * weighted geometric mean of the dimensions. Where lines ask for different bands of the accent-to-tap ratio, each
 * line's ratio is scored by its own band, weighted by its strokes. What isn't measured drops out and is listed in
 * `leftOut`. No score under 24 strokes, nor when less than half the applicable dimensions could be scored.
 *
 * @example dimensions scoring 90 and 40 // overall sqrt(90 · 40) = 60
 */
export function scoreTake({
  measures,
  lines,
  strokes,
  rubric,
}: {
  readonly measures: readonly MeasureResult[];
  readonly lines: readonly AskedLine[];
  /** Graded strokes of the take. */
  readonly strokes: number;
  readonly rubric: Rubric;
}): ScoredTake {
  if (strokes < fewestStrokes)
    return {
      state: 'not-scored',
      reason: { code: 'too-few-strokes-to-score', facts: { strokes, needed: fewestStrokes } },
    };
  const leftOut: Reason[] = [];
  const scored: (Dimension & { weight: number })[] = [];
  let applicable = 0;
  for (const { id, weight, criteria } of rubric.dimensions) {
    let applies = false;
    const parts: ScoredMeasure[] = [];
    for (const criterion of criteria) {
      const found = criterionTargets(criterion, lines).map((t) => ({
        ...t,
        outcome: findMeasure(measures, criterion.measure, t.scope)?.outcome,
      }));
      const there = found.filter(
        (t): t is typeof t & { outcome: Measured } => t.outcome?.state === 'measured',
      );
      const total = there.reduce((sum, t) => sum + t.outcome.strokes, 0);
      for (const { scope, perfect, outcome } of there)
        parts.push({
          id: criterion.measure,
          scope,
          weight: (criterion.weight * outcome.strokes) / total,
          score: scoreOfValue(outcome, { ...criterion, perfect }),
        });
      applies ||= found.some((t) => t.outcome && t.outcome.state !== 'not-applicable');
      for (const { scope, outcome } of found)
        if (outcome?.state !== 'measured')
          leftOut.push({
            code: 'measure-left-out',
            facts: {
              dimension: id,
              measure: criterion.measure,
              state: outcome?.state ?? 'not-there',
              ...(scope.line === undefined ? {} : { line: scope.line + 1 }),
            },
          });
    }
    if (applies) applicable += weight;
    if (parts.length === 0) continue;
    const measuresWorstFirst = parts.toSorted((a, b) => a.score.score - b.score.score);
    scored.push({ id, weight, score: meanScore(parts), measures: measuresWorstFirst });
  }
  const covered = scored.reduce((sum, d) => sum + d.weight, 0);
  if (covered === 0 || covered < leastCoverage * applicable)
    return {
      state: 'not-scored',
      reason: { code: 'too-little-measured', facts: { scored: scored.length, of: rubric.dimensions.length } },
    };
  return {
    state: 'scored',
    leftOut,
    scores: {
      rubric: rubric.id,
      ...(rubrics.includes(rubric) ? {} : { points: pointsOf(rubric) }),
      overall: geometricMeanScore(scored),
      dimensions: scored.map(({ weight: _, ...dimension }) => dimension),
    },
  };
}
