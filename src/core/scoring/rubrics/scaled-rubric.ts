import type { Rubric } from '../rubric.ts';

/**
 * A rubric with every control point moved away from perfect, or towards it, by one factor; bands and weights stay.
 *
 * @example scaledRubric(steady, { id: 'first-years', title: 'First years', factor: 1.5 })
 * // timing-spread-share: secure 7.5, nearly 15
 */
export function scaledRubric(
  rubric: Rubric,
  { id, title, factor }: { readonly id: string; readonly title: string; readonly factor: number },
): Rubric {
  return {
    id,
    title,
    dimensions: rubric.dimensions.map((dimension) => ({
      ...dimension,
      criteria: dimension.criteria.map((criterion) => ({
        ...criterion,
        secure: criterion.secure * factor,
        nearly: criterion.nearly * factor,
        source: `${criterion.source}; ${factor} times the points of ${rubric.id}`,
      })),
    })),
  };
}
