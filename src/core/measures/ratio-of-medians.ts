import { bartlettVariance } from '../stats/bartlett-variance.ts';
import { median } from '../stats/median.ts';
import { medianStandardError } from '../stats/median-standard-error.ts';
import { studentTQuantile } from '../stats/student-t-quantile.ts';
import { sumsByBeat } from './beat-of.ts';
import { accentsAndTaps, levelsOf } from './level-classes.ts';
import type { PlayedStroke } from './played-stroke.ts';

/** Median accent level minus median tap level, dB, with a 95 % interval. */
export interface Ratio {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Difference of the two medians. Each stroke pulls its median by ± standard error/√n (Price & Bonett 2002); pulls are
 * summed by beat, and beats next to each other may be alike (Bartlett weights, lag 1); Student's t of beats − 1.
 * Needs four accents and four taps.
 */
export function ratioOfMedians(strokes: readonly PlayedStroke[]): Ratio {
  const { accents, taps } = accentsAndTaps(strokes);
  const side = (part: readonly PlayedStroke[]) => {
    const levels = levelsOf(part);
    return { centre: median(levels), pull: medianStandardError(levels) / Math.sqrt(part.length) };
  };
  const loud = side(accents);
  const soft = side(taps);
  const sums = sumsByBeat(strokes, ({ slot, levelDb }) =>
    slot.accent
      ? loud.pull * Math.sign(levelDb - loud.centre)
      : -soft.pull * Math.sign(levelDb - soft.centre),
  );
  const beats = sums.length;
  const variance = (bartlettVariance(sums, 1) * beats) / (beats - 1);
  const half = studentTQuantile(0.975, beats - 1) * Math.sqrt(variance);
  const value = loud.centre - soft.centre;
  return { value, low: value - half, high: value + half };
}
