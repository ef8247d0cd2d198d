import { circularSummary } from '../stats/circular-summary.ts';
import { median } from '../stats/median.ts';

/**
 * Middle of values that count only up to whole numbers, such as places within a beat: the median of the values
 * unrolled round their circular mean (Fisher 1993, section 2.2.2, quoted from memory). Between −1 and 1.
 *
 * @example circularMedian([0.9, 0, 0.1]) // → 0
 */
export const circularMedian = (values: readonly number[]): number => {
  const { direction } = circularSummary(values.map((value) => 2 * Math.PI * value));
  const guess = direction / (2 * Math.PI);
  return guess + median(values.map((value) => value - guess - Math.round(value - guess)));
};
