import { bartlettVariance } from '../stats/bartlett-variance.ts';
import { smoothMedian } from '../stats/smooth-median.ts';
import { studentTQuantile } from '../stats/student-t-quantile.ts';
import { squaredBartlettWeights, sumsByBeat } from './beat-of.ts';
import { accentsAndTaps, levelsOf } from './level-classes.ts';
import type { PlayedStroke } from './played-stroke.ts';

/** Median accent level minus median tap level, dB, with a 95 % interval. */
interface Ratio {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Difference of the two medians, smoothed so that the errors of single levels average out (Harrell & Davis 1982). The
 * strokes' pulls on them are summed by beat, and beats next to each other may be alike (Bartlett weights, lag 1). Pulls
 * add up to 0, which takes (1 − 1/n)² off that variance when they are independent; its degrees of freedom are n − 1
 * over the sum of its squared weights (Priestley 1981, quoted from memory). Needs four accents and four taps.
 */
export function ratioOfMedians(strokes: readonly PlayedStroke[]): Ratio {
  const { accents, taps } = accentsAndTaps(strokes);
  const loud = smoothMedian(levelsOf(accents));
  const soft = smoothMedian(levelsOf(taps));
  const pulls = new Map([
    ...accents.map((stroke, i) => [stroke, loud.pulls[i]!] as const),
    ...taps.map((stroke, i) => [stroke, -soft.pulls[i]!] as const),
  ]);
  const sums = sumsByBeat(strokes, (stroke) => pulls.get(stroke)!);
  const beats = sums.length;
  const variance = bartlettVariance(sums, 1) * (beats / (beats - 1)) ** 2;
  const half = studentTQuantile(0.975, (beats - 1) / squaredBartlettWeights) * Math.sqrt(variance);
  const value = loud.value - soft.value;
  return { value, low: value - half, high: value + half };
}
