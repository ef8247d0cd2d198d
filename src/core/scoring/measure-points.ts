import type { MeasurePoints, TakeResult } from '../result/take-result.ts';
import type { Rubric } from './rubric.ts';
import { rubrics } from './rubrics/index.ts';
import { steady } from './rubrics/steady.ts';

/** The two points of each measure that a rubric marks. */
export function pointsOf(rubric: Rubric): MeasurePoints[] {
  return rubric.dimensions.flatMap(({ criteria }) =>
    criteria.map(({ measure, perfect, secure, nearly }) => ({ measure, perfect, secure, nearly })),
  );
}

/** The points that a take was marked by; those of "steady" where it has no scores. */
export function pointsOfTake({ scores }: Pick<TakeResult, 'scores'>): readonly MeasurePoints[] {
  return scores?.points ?? pointsOf(rubrics.find(({ id }) => id === scores?.rubric) ?? steady);
}
