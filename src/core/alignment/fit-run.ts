import { madToSd } from '../stats/mad.ts';
import { median } from '../stats/median.ts';

/** A straight line through strokes: `origin` is the time (s) of beat 0, `period` seconds per beat. */
interface RunFit {
  readonly origin: number;
  readonly period: number;
  /** Robust spread of the residuals round the line, s. */
  readonly spread: number;
}

/** Values up to which sorting by insertion is the faster. */
const few = 24;

/**
 * The median, without the cost of a general sort where there are few values: it is asked for a million times. Sorts
 * them.
 */
const middle = (values: number[]): number => {
  const n = values.length;
  if (n > few) return median(values);
  for (let i = 1; i < n; i++) {
    const value = values[i]!;
    let k = i - 1;
    for (; k >= 0 && values[k]! > value; k--) values[k + 1] = values[k]!;
    values[k + 1] = value;
  }
  return n % 2 === 1 ? values[(n - 1) / 2]! : (values[n / 2 - 1]! + values[n / 2]!) / 2;
};

const lineThrough = (times: readonly number[], beats: readonly number[], weights: readonly number[]) => {
  let sw = 0;
  let sb = 0;
  let st = 0;
  for (let i = 0; i < times.length; i++) {
    sw += weights[i]!;
    sb += weights[i]! * beats[i]!;
    st += weights[i]! * times[i]!;
  }
  let sbb = 0;
  let sbt = 0;
  for (let i = 0; i < times.length; i++) {
    const b = beats[i]! - sb / sw;
    sbb += weights[i]! * b * b;
    sbt += weights[i]! * b * (times[i]! - st / sw);
  }
  const period = sbb > 0 ? sbt / sbb : 0;
  return { origin: st / sw - (period * sb) / sw, period };
};

/**
 * Fits onset times (s) against beats by a line that a few strays don't move: it starts from the median slope
 * over half the run and then weighs down what lies beyond 1.345 robust spreads (Huber 1964). Null for fewer
 * than two strokes or when all lie on one beat.
 *
 * @example fitRun([1, 1.5, 2.9, 2.5, 3], [0, 1, 2, 3, 4])!.period.toFixed(2) // → '0.50'
 */
export const fitRun = (times: readonly number[], beats: readonly number[]): RunFit | null => {
  const n = times.length;
  if (n < 2) return null;
  const half = Math.max(1, Math.floor(n / 2));
  const slopes: number[] = [];
  for (let i = 0; i + half < n; i++) {
    if (beats[i + half] !== beats[i])
      slopes.push((times[i + half]! - times[i]!) / (beats[i + half]! - beats[i]!));
  }
  if (slopes.length === 0) return null;
  let period = middle(slopes);
  const values: number[] = [];
  for (let i = 0; i < n; i++) values.push(times[i]! - period * beats[i]!);
  let origin = middle(values);
  let spread = 0;
  const weights: number[] = [];
  for (let round = 0; round < 6; round++) {
    for (let i = 0; i < n; i++) values[i] = Math.abs(times[i]! - origin - period * beats[i]!);
    for (let i = 0; i < n; i++) weights[i] = values[i]!;
    spread = madToSd * middle(values);
    const bound = 1.345 * Math.max(spread, 1e-6);
    for (let i = 0; i < n; i++) weights[i] = weights[i]! <= bound ? 1 : bound / weights[i]!;
    const line = lineThrough(times, beats, weights);
    const settled = line.origin === origin && line.period === period;
    ({ origin, period } = line);
    if (settled) break;
  }
  return { origin, period, spread };
};
