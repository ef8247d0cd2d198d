import { studentTQuantile } from '../stats/student-t-quantile.ts';

/** A difference that is there should be found in four comparisons of five. Common practice. */
const power = 0.8;
const level = 0.05;
/** Beyond this many days a side the answer is "not by this way". */
const most = 200;

/**
 * Days on each side that a comparison of two means needs to find `difference` at 5 % in four cases of five, when days
 * scatter with `sd`: the least n with t(.975) + t(.8) ≤ difference/(sd·√(2/n)), degrees 2n − 2; null beyond 200.
 * Agrees with the power of the two-sample t test (noncentral t) to a day.
 *
 * @example daysNeeded(1, 1) // 17
 */
export function daysNeeded(difference: number, sd: number): number | null {
  for (let n = 3; n <= most; n++) {
    const degrees = 2 * n - 2;
    const needed = studentTQuantile(1 - level / 2, degrees) + studentTQuantile(power, degrees);
    if (needed * sd * Math.sqrt(2 / n) <= Math.abs(difference)) return n;
  }
  return null;
}
