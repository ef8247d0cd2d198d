import { anyBetween } from '../stats/any-between.ts';
import { mean as average } from '../stats/mean.ts';
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
/**
 * From here on, dB a dB, an accent dies away as loud as it was struck, and nothing held it: of real drums whose accents
 * ring longer than taps they came to 0.95 and more, held by a limiter to 0.5 at most (`reports/recording-check.md`).
 */
const follow = 0.6;

interface Middle {
  readonly value: number;
  readonly variance: number;
}

/**
 * By how much accents gain on taps while both die away, dB, below 500 Hz; what chance may do is taken off, NaN for too
 * few strokes. A drum's modes die away alike whatever the blow, so that the difference stays, or shrinks where taps
 * come down to the noise or lie on an accent's tail. It grows where a limiter lets go of the accents.
 * It does so too where a drum rings longer the harder it is struck, but then each accent as loud as it was: NaN there.
 */
export function levelRecoveryDb(heard: Pick<HeardRecording, 'sound' | 'hearing' | 'performance'>): number {
  const { sound, hearing, performance } = heard;
  const { mean, frameRate } = sound;
  const clicks = hearing.click?.times ?? [];
  const sounds = hearing.sounds.map(({ time }) => time);
  const strokes = performance.strokes.filter(
    ({ time }) => !anyBetween(clicks, time - nearClick, time + nearClick),
  );
  /** Own level and level in a stretch behind, of accents or taps that nothing sounds with there. */
  const levelsIn = ({ from, to }: { readonly from: number; readonly to: number }, accent: boolean) =>
    strokes
      .filter(
        ({ time, slot }) => slot.accent === accent && !anyBetween(sounds, time + margin, time + to + margin),
      )
      .map(({ time, levelDb }) => ({
        own: levelDb,
        behind: slopePowerDb(mean, (time + from) * frameRate, (time + to) * frameRate),
      }));
  const differenceIn = (stretch: { readonly from: number; readonly to: number }) => {
    const accents = levelsIn(stretch, true);
    const [loud, soft] = [accents, levelsIn(stretch, false)].map((some) =>
      middleOf(some.map(({ behind }) => behind)),
    );
    if (!loud || !soft) return null;
    const value = loud.value - soft.value;
    return { value, variance: loud.variance + soft.variance, follows: slopeOf(accents) };
  };
  const start = differenceIn(first);
  // Where written accents weren't the louder strokes, a real accent's tail lies over them.
  if (start === null || start.value <= 0) return Number.NaN;
  const there = later.flatMap((stretch) => differenceIn(stretch) ?? []);
  if (there.length === 0 || average(there.map(({ follows }) => follows)) >= follow) return Number.NaN;
  return Math.max(
    ...there.map(
      ({ value, variance }) => value - start.value - errors * Math.sqrt(variance + start.variance),
    ),
  );
}

/** By how many dB the level behind goes with each dB of strokes' own level: a regression's slope; 1 for a single level. */
function slopeOf(strokes: readonly { readonly own: number; readonly behind: number }[]): number {
  const [x, y] = [average(strokes.map(({ own }) => own)), average(strokes.map(({ behind }) => behind))];
  const together = strokes.reduce((sum, { own, behind }) => sum + (own - x) * (behind - y), 0);
  const spread = strokes.reduce((sum, { own }) => sum + (own - x) ** 2, 0);
  return spread > 0 ? together / spread : 1;
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
