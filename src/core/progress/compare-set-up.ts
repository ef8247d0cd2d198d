import type { MeanDifference } from '../stats/mean-difference.ts';
import { studentTQuantile } from '../stats/student-t-quantile.ts';
import { welchT } from '../stats/welch-t.ts';
import type { SetUpReference } from './set-up-reference.ts';

/** Difference of levels, now less last time, dB, with its 95 % interval. */
interface LevelShift {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Whether levels compare. `alike`: the whole interval lies within the margin; `different`: all of it outside;
 * `not-told`: eight strokes a hand don't decide it, or the hands moved apart.
 */
export interface SetUpComparison {
  readonly verdict: 'alike' | 'different' | 'not-told';
  /** Both hands together. */
  readonly shift: LevelShift;
  /** Right hand's shift less the left's: beyond the margin the microphone stands nearer to one hand than it did. */
  readonly handsApart: LevelShift;
}

/**
 * Levels that differ by less count as alike, dB: about the smallest change of an accent-to-tap ratio that a teacher
 * would remark on. Our judgement.
 */
const alikeDb = 2;

/** A combination of both hands' shifts, with Welch's interval. */
function combined(right: MeanDifference, left: MeanDifference, sign: 1 | -1, share: number): LevelShift {
  const value = share * (right.difference + sign * left.difference);
  const [a, b] = [right.se ** 2, left.se ** 2];
  const se = share * Math.sqrt(a + b);
  const degrees = a + b > 0 ? (a + b) ** 2 / (a ** 2 / right.degrees + b ** 2 / left.degrees) : right.degrees;
  const half = se === 0 ? 0 : studentTQuantile(0.975, degrees) * se;
  return { value, low: value - half, high: value + half };
}

/**
 * Whether the microphone stands and records as it did last time, from eight strokes of each hand at one height then and
 * now. The shift is the mean of both hands' differences of mean level, its interval Welch's with Satterthwaite's
 * degrees (Welch 1947). What it finds may also be the player's own other height: sound can't tell the two apart.
 *
 * @example compareSetUp(thisWeek, lastWeek).verdict // 'alike'
 */
export function compareSetUp(now: SetUpReference, last: SetUpReference): SetUpComparison {
  const right = welchT(now.right, last.right);
  const left = welchT(now.left, last.left);
  const shift = combined(right, left, 1, 0.5);
  const handsApart = combined(right, left, -1, 1);
  const apart = handsApart.low > alikeDb || handsApart.high < -alikeDb;
  if (shift.low > alikeDb || shift.high < -alikeDb) return { verdict: 'different', shift, handsApart };
  const alike = !apart && shift.low > -alikeDb && shift.high < alikeDb;
  return { verdict: alike ? 'alike' : 'not-told', shift, handsApart };
}
