import { anyBetween } from '../stats/any-between.ts';
import { median } from '../stats/median.ts';
import type { HeardRecording } from './heard-recording.ts';

/** Times after a stroke, s: just after its attack, and while it dies away. */
const first = { from: 0.004, to: 0.014 };
const later = [
  { from: 0.03, to: 0.05 },
  { from: 0.05, to: 0.08 },
  { from: 0.08, to: 0.11 },
  { from: 0.11, to: 0.15 },
] as const;
/** The next sound is left out by so much, and a click's neighbourhood, s. */
const margin = 0.006;
const nearClick = 0.1;
const fewest = 6;
/** A difference counts from so many of its standard errors on. */
const errors = 3;
const leastPower = 1e-15;

interface Middle {
  readonly value: number;
  readonly variance: number;
}

/**
 * By how much accents gain on taps while both die away, dB, below 500 Hz; what chance may do is taken off, NaN for too
 * few strokes. A drum's modes die away alike whatever the blow, so that the difference stays, or shrinks where taps
 * come down to the noise or lie on an accent's tail. It grows where a limiter lets go of the accents.
 */
export function levelRecoveryDb({
  sound,
  hearing,
  performance,
}: Pick<HeardRecording, 'sound' | 'hearing' | 'performance'>): number {
  const { mean, frameRate } = sound;
  const clicks = hearing.click?.times ?? [];
  const sounds = hearing.sounds.map(({ time }) => time);
  const strokes = performance.strokes.filter(
    ({ time }) => !anyBetween(clicks, time - nearClick, time + nearClick),
  );
  const difference = ({ from, to }: { readonly from: number; readonly to: number }): Middle | null => {
    const ofKind = (accent: boolean) =>
      middleOf(
        strokes
          .filter(
            ({ time, slot }) =>
              slot.accent === accent && !anyBetween(sounds, time + margin, time + to + margin),
          )
          .map(({ time }) => slopePowerDb(mean, (time + from) * frameRate, (time + to) * frameRate)),
      );
    const [accents, taps] = [ofKind(true), ofKind(false)];
    if (accents === null || taps === null) return null;
    return { value: accents.value - taps.value, variance: accents.variance + taps.variance };
  };
  const start = difference(first);
  // Where written accents weren't the louder strokes, a real accent's tail lies over them.
  if (start === null || start.value <= 0) return Number.NaN;
  const gains = later.flatMap((stretch) => {
    const here = difference(stretch);
    if (here === null) return [];
    return [here.value - start.value - errors * Math.sqrt(here.variance + start.variance)];
  });
  return gains.length === 0 ? Number.NaN : Math.max(...gains);
}

/** Median with its variance, by the median absolute deviation as for normal deviates. */
function middleOf(values: readonly number[]): Middle | null {
  if (values.length < fewest) return null;
  const value = median(values);
  const sd = 1.4826 * median(values.map((one) => Math.abs(one - value)));
  return { value, variance: (1.57 * sd * sd) / values.length };
}

/** Mean square of the steps between frames: offset and rumble hardly count. */
function slopePowerDb(mean: Float32Array, from: number, to: number): number {
  const start = Math.max(1, Math.round(from));
  const end = Math.min(mean.length, Math.round(to));
  let sum = 0;
  for (let i = start; i < end; i++) sum += (mean[i]! - mean[i - 1]!) ** 2;
  return 10 * Math.log10(sum / Math.max(1, end - start) + leastPower);
}
