import { mean } from './mean.ts';
import { standardDeviation } from './standard-deviation.ts';
import { studentTCdf } from './student-t-cdf.ts';

/** What a comparison of two means needs of each sample; the unit is the caller's. */
export interface SampleSummary {
  readonly n: number;
  readonly mean: number;
  readonly sd: number;
}

/** First mean minus second, its standard error, and Student's t of it with a two-sided p. */
export interface MeanDifference {
  readonly difference: number;
  readonly se: number;
  readonly degrees: number;
  readonly t: number;
  readonly p: number;
}

/** Count, mean and standard deviation of two or more values; RangeError under two. */
export function summaryOf(values: ArrayLike<number>): SampleSummary {
  return { n: values.length, mean: mean(values), sd: standardDeviation(values) };
}

/**
 * Student's t of a difference. Without any scatter it is 0 (p 1) where there is no difference and infinite (p 0) where
 * there is one.
 *
 * @example tOfDifference(2, 1, 1).p // 2·(½ − arctan(2)/π), 0.2952
 */
export function tOfDifference(difference: number, se: number, degrees: number): MeanDifference {
  if (se > 0) {
    const t = difference / se;
    return { difference, se, degrees, t, p: 2 * studentTCdf(-Math.abs(t), degrees) };
  }
  if (difference === 0) return { difference, se, degrees, t: 0, p: 1 };
  return { difference, se, degrees, t: Math.sign(difference) * Infinity, p: 0 };
}
