import { median } from '../stats/median.ts';

/**
 * A sound between two others stands nearer than this to both, and they no further apart than that, in usual intervals.
 */
const between = { each: 0.8, both: 1.15 };

/**
 * Times in order, s, without those that stand between two that follow each other as usual: the seam of lost sound amid
 * ringing is heard as one more attack, and hides the step that it makes.
 *
 * @example withoutBetween([0, 0.2, 0.4, 0.47, 0.6, 0.8]) // [0, 0.2, 0.4, 0.6, 0.8]
 */
export function withoutBetween(times: readonly number[]): readonly number[] {
  const intervals = times.slice(1).map((time, i) => time - times[i]!);
  if (intervals.length === 0) return times;
  const middle = median(intervals);
  const usual = median(intervals.filter((one) => one > 0.6 * middle && one < 1.4 * middle));
  const kept: number[] = [];
  for (const [i, time] of times.entries()) {
    const before = kept.at(-1) ?? Number.NEGATIVE_INFINITY;
    const after = times[i + 1] ?? Number.POSITIVE_INFINITY;
    const isNear = time - before < between.each * usual && after - time < between.each * usual;
    if (!(isNear && after - before < between.both * usual)) kept.push(time);
  }
  return kept;
}
