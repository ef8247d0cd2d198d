import type { Stroke } from '../onsets/stroke.ts';
import { anyBetween } from '../stats/any-between.ts';
import { median } from '../stats/median.ts';
import { quantile } from '../stats/quantile.ts';
import { liveStretch } from './live-stretch.ts';
import type { SoundFeatures } from './sound-pass.ts';

/**
 * How the quiet between sounds runs, dB of the mean square step from sample to sample (a measure of hiss: hum and
 * rumble hardly count). NaN or empty where there is too little to tell.
 */
export interface QuietCourse {
  /** Medians over the loud sounds, a bin after the other from the onset on. */
  readonly afterLoudDb: readonly number[];
  /** Single sounds that no click covers, each from its onset until shortly before the next, bin after bin. */
  readonly decaysDb: readonly (readonly number[])[];
  /** Where nothing sounds and nothing has sounded for a while, and nobody rustles: the quieter part of it. */
  readonly pauseDb: number;
  /** Where those windows begin, s, and how long they are. */
  readonly pauses: readonly number[];
  /** Just before sounds, and a little earlier. */
  readonly beforeDb: number;
  readonly earlierDb: number;
}

export const binSeconds = 0.006;
const bins = 40;
/** Fewer sounds give no median worth having. */
const fewestSounds = 6;
/** The loud ones are this share. */
const loudShare = 1 / 3;
/** As many sounds are followed, spread over the take, each no longer than this, s. */
const followed = { most: 150, seconds: 0.8 };
/** A pause begins so long after a sound, s, and ends so long before the next; it is heard in windows. */
export const pause = { after: 0.35, before: 0.03, windowSeconds: 0.02, fewest: 8, quantile: 0.25 };
/** Steps between windows that are no hiss's, and the level over the last bit's flicker, dB. Our judgement. */
const restless = { stepDb: 1.5, quantile: 0.75, fromDb: -88 };
const before = { from: 0.011, to: 0.004 };
const earlier = { from: 0.045, to: 0.025 };
/** Sounds so near each other leave no quiet between them, s. */
const nearest = 0.1;
/** A sound so near a click dies away with it, s. */
const clickSeconds = 0.09;
/** Nothing lies under this: a third of the last bit's flicker at 24 bits. */
const leastPower = 1e-15;

const decibels = (power: number) => 10 * Math.log10(power + leastPower);

/**
 * Whether somebody rustles, breathes or talks in a pause, such as on the way from the phone to the pad: hiss is steady
 * from window to window (0.2 dB), also while a gain rises. The last bit's flicker isn't.
 */
function isRestless(levelsDb: readonly number[]): boolean {
  if (levelsDb.length < pause.fewest || median(levelsDb) < restless.fromDb) return false;
  const steps = levelsDb.slice(1).map((level, i) => Math.abs(level - levelsDb[i]!));
  return quantile(steps, restless.quantile) > restless.stepDb;
}

/** The quiet between sounds, which are in order of time; `clicks` are those of a metronome, s. */
export function quietCourse(
  heard: SoundFeatures,
  sounds: readonly Pick<Stroke, 'time' | 'levelDb' | 'sound'>[],
  clicks: readonly number[] = [],
): QuietCourse {
  const { bright, frameRate } = heard;
  const { from: start, to: end } = liveStretch(heard);
  const meanDb = (from: number, to: number): number => {
    const first = Math.max(0, Math.round(from * frameRate));
    const last = Math.min(bright.length, Math.round(to * frameRate));
    if (last <= first) return Number.NaN;
    let sum = 0;
    for (let frame = first; frame < last; frame++) sum += bright[frame]!;
    return decibels(sum / (last - first));
  };
  const middle = (values: readonly number[]) => (values.length < fewestSounds ? Number.NaN : median(values));
  const course = (some: readonly { time: number; next: number }[]) => {
    const out: number[] = [];
    for (let bin = 0; bin < bins; bin++) {
      const at = bin * binSeconds;
      const values = some
        .filter(({ time, next }) => time + at + 2 * binSeconds < next)
        .map(({ time }) => meanDb(time + at, time + at + binSeconds));
      if (values.length < fewestSounds) break;
      out.push(median(values));
    }
    return out;
  };
  const placed = sounds.map(({ time, levelDb }, i) => ({
    time,
    levelDb,
    since: time - (sounds[i - 1]?.time ?? start),
    next: sounds[i + 1]?.time ?? end,
  }));
  const levels = placed.map(({ levelDb }) => levelDb);
  const loudDb = levels.length === 0 ? 0 : quantile(levels, 1 - loudShare);
  const clear = placed.filter(({ since }) => since > nearest);
  // A machine's click breaks off as nothing else does.
  const own = placed.filter(
    ({ time }, i) =>
      sounds[i]!.sound !== 'click' && !anyBetween(clicks, time - clickSeconds, time + clickSeconds),
  );
  const quiet: number[] = [];
  const pauses: number[] = [];
  const starts = [{ from: start + 0.02, to: placed[0]?.time ?? end }];
  for (const { time, next } of placed) starts.push({ from: time + pause.after, to: next });
  for (const { from, to } of starts) {
    const places: number[] = [];
    for (let at = from; at + pause.windowSeconds < to - pause.before; at += pause.windowSeconds)
      places.push(at);
    const levelsDb = places.map((at) => meanDb(at, at + pause.windowSeconds));
    if (isRestless(levelsDb)) continue;
    for (const at of places) pauses.push(at);
    for (const levelDb of levelsDb) quiet.push(levelDb);
  }
  return {
    afterLoudDb: course(placed.filter(({ levelDb }) => levelDb >= loudDb)),
    decaysDb: own
      .filter((_, i) => i % Math.ceil(own.length / followed.most) === 0 || i === own.length - 1)
      .map(({ time, next }) => {
        const seconds = Math.min(next - time, followed.seconds) - 2 * binSeconds;
        return Array.from({ length: Math.max(0, Math.floor(seconds / binSeconds)) }, (_, bin) =>
          meanDb(time + bin * binSeconds, time + (bin + 1) * binSeconds),
        );
      }),
    pauseDb: quiet.length < pause.fewest ? Number.NaN : quantile(quiet, pause.quantile),
    pauses,
    beforeDb: middle(clear.map(({ time }) => meanDb(time - before.from, time - before.to))),
    earlierDb: middle(clear.map(({ time }) => meanDb(time - earlier.from, time - earlier.to))),
  };
}
