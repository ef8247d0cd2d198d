import type { Outcome } from '../result/take-result.ts';
import { chiSquareQuantile } from '../stats/chi-square-quantile.ts';
import { measured, notMeasurable } from './outcomes.ts';

/** How the range of a spread is found. */
export const spreadInterval =
  'Chi-square on the variance. The error of finding strokes is taken out of the value and both bounds, up to a quarter of the variance.';

/** Above this share of a variance the finding of strokes, not the player, makes the figure (our judgement). */
const largestErrorShare = 0.25;

/**
 * Outcome of a standard deviation: the error variance of finding the strokes is taken out of the variance and of both
 * bounds of its chi-square interval; where it is more than a quarter of the variance the spread can't be measured.
 * `perUnit` turns the variances' unit into the figure's.
 */
export function spreadOutcome(figure: {
  readonly variance: number;
  readonly errorVariance: number;
  readonly degrees: number;
  readonly perUnit: number;
  readonly unit: string;
  readonly strokes: number;
  readonly pointsAt: readonly number[];
}): Outcome {
  const { variance, errorVariance, degrees, perUnit, unit, strokes, pointsAt } = figure;
  if (errorVariance > largestErrorShare * variance) {
    const facts = { spread: Math.sqrt(variance) * perUnit, error: Math.sqrt(errorVariance) * perUnit, unit };
    return notMeasurable('found-too-coarsely', facts);
  }
  const own = (v: number) => Math.sqrt(Math.max(0, v - errorVariance)) * perUnit;
  return measured({
    value: own(variance),
    low: own((degrees * variance) / chiSquareQuantile(0.975, degrees)),
    high: own((degrees * variance) / chiSquareQuantile(0.025, degrees)),
    strokes,
    pointsAt,
  });
}
