import type { Scope } from '../../result/take-result.ts';
import { criterionTargets } from '../criterion-targets.ts';
import { type Measured, measuredOutcome } from '../find-measure.ts';
import { type Perfect, scoreOfValue, secureScore } from '../score-curve.ts';
import type { AdviceInput } from './finding.ts';
import { sureClaims } from './sure-claims.ts';

/** A scored measure that is short of secure beyond doubt. */
interface Shortfall {
  readonly scope: Scope;
  readonly perfect: Perfect;
  readonly outcome: Measured;
  /** Dimension's share times measure's share times (100 − score). */
  readonly lost: number;
}

/**
 * Where a measure falls short of secure with its whole interval, and would when all else is asked as well; one entry
 * for each scope that the rubric scores. Empty when it isn't scored, isn't measured, is secure or might be.
 */
export function shortfalls(input: AdviceInput, id: string): Shortfall[] {
  const { measures, lines, rubric } = input;
  const isSure = sureClaims(input);
  const allDimensions = rubric.dimensions.reduce((sum, d) => sum + d.weight, 0);
  return rubric.dimensions.flatMap((dimension) => {
    const allCriteria = dimension.criteria.reduce((sum, c) => sum + c.weight, 0);
    return dimension.criteria
      .filter((criterion) => criterion.measure === id)
      .flatMap((criterion) => {
        const targets = criterionTargets(criterion, lines);
        const share = ((dimension.weight / allDimensions) * criterion.weight) / allCriteria / targets.length;
        return targets.flatMap(({ scope, perfect }) => {
          const outcome = measuredOutcome(measures, id, scope);
          if (!outcome) return [];
          const score = scoreOfValue(outcome, { ...criterion, perfect });
          if (score.high >= secureScore || !isSure(id, scope)) return [];
          return [{ scope, perfect, outcome, lost: share * (100 - score.score) }];
        });
      });
  });
}
