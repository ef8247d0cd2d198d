import { peakMagnitude } from '../../fixtures/generator/peak-level.ts';
import { levelSeconds, strokeLevel } from '../../src/core/onsets/stroke-level.ts';
import { burg } from '../../src/core/signal/burg.ts';
import { extrapolate } from '../../src/core/signal/extrapolate.ts';
import { halfBandState, splitHalfBand } from '../../src/core/signal/half-band.ts';
import { applyHighPass, highPass } from '../../src/core/signal/high-pass.ts';

/** Sound round one stroke: `onset` and `pastFrom` (from where on the sound is the previous stroke's tail), samples. */
export interface StrokeWindow {
  readonly samples: Float32Array;
  readonly rate: number;
  readonly onset: number;
  readonly pastFrom: number;
}

/** One way to say how loud a stroke is. */
export interface LevelCandidate {
  readonly name: string;
  readonly level: (window: StrokeWindow) => number;
}

const db = (power: number) => 10 * Math.log10(power + 1e-14);
const lowHz = 150;
const guardSeconds = 0.0006;
const order = 48;

/** The window at 5.5 to 11 kHz and above 150 Hz: the band in which the program measures. */
function bandLimited({ samples, rate, onset, pastFrom }: StrokeWindow): StrokeWindow {
  const out = samples.slice();
  let count = out.length & ~7;
  let low = rate;
  while (low >= 11_000) {
    splitHalfBand(halfBandState(), out, count, out, null);
    count >>= 1;
    low /= 2;
  }
  applyHighPass(highPass(lowHz, low), out, count);
  const scale = low / rate;
  return { samples: out.subarray(0, count), rate: low, onset: onset * scale, pastFrom: pastFrom * scale };
}

/** From just before the onset on, `seconds` of the stroke; with its predecessor's tail taken off, or as it is. */
function strokeAlone(window: StrokeWindow, seconds: number, withoutTail: boolean): Float32Array {
  const { samples, rate, onset, pastFrom } = window;
  const at = Math.max(0, Math.floor(onset - guardSeconds * rate));
  const end = Math.min(samples.length, at + Math.round((seconds + guardSeconds) * rate));
  const stroke = samples.slice(at, end);
  const from = Math.ceil(Math.max(0, pastFrom));
  if (withoutTail && at - from > 2 * order) {
    const tail = extrapolate(burg(samples, from, at, order), samples, at, stroke.length);
    for (let i = 0; i < stroke.length; i++) stroke[i]! -= tail[i]!;
  }
  return stroke;
}

/**
 * Energy that such an extrapolation leaves of the tail: what it misses when it is made so much earlier, where the sound
 * is known.
 */
function energyMissed(window: StrokeWindow, seconds: number): number {
  const { samples, rate, onset, pastFrom } = window;
  const at = Math.max(0, Math.floor(onset - guardSeconds * rate));
  const from = Math.ceil(Math.max(0, pastFrom));
  const length = Math.round((seconds + guardSeconds) * rate);
  if (at - from <= 2 * order + length) return 0;
  const guess = extrapolate(burg(samples, from, at, order), samples, at - length, length);
  return guess.reduce((sum, x, i) => sum + (samples[at - length + i]! - x) ** 2, 0);
}

const energy = (samples: Float32Array) => samples.reduce((sum, x) => sum + x * x, 0);
const peakDb = (samples: Float32Array) => db(peakMagnitude(Float64Array.from(samples)) ** 2);

const power = (ms: number, withoutTail: boolean): LevelCandidate => ({
  name: `power of ${ms} ms${withoutTail ? ', tail off' : ''}`,
  level: (window) => {
    const band = bandLimited(window);
    const stroke = strokeAlone(band, ms / 1000, withoutTail);
    return db((2 * energy(stroke)) / ((ms / 1000) * band.rate));
  },
});
/** Takes `share` of what the extrapolation misses off too; at least `least` of the energy is left. */
const powerLessMiss = (ms: number, share: number, least: number): LevelCandidate => ({
  name: `power of ${ms} ms, tail and ${share} of its miss off, at least ${least} left`,
  level: (window) => {
    const band = bandLimited(window);
    const left = energy(strokeAlone(band, ms / 1000, true));
    const stroke = Math.max(least * left, left - share * energyMissed(band, ms / 1000));
    return db((2 * stroke) / ((ms / 1000) * band.rate));
  },
});
const bandPeak = (ms: number): LevelCandidate => ({
  name: `band-limited peak of ${ms} ms, tail off`,
  level: (window) => peakDb(strokeAlone(bandLimited(window), ms / 1000, true)),
});

/** Ways to measure a level, the program's own first. */
export const levelCandidates: readonly LevelCandidate[] = [
  {
    name: `the program's own (power of ${levelSeconds * 1000} ms, tail and miss off)`,
    level: ({ samples, rate, onset, pastFrom }) => {
      const end = Math.ceil(onset + (levelSeconds + 0.004) * rate);
      return strokeLevel(samples.slice(0, end), rate, onset, pastFrom).levelDb;
    },
  },
  { name: 'peak of 15 ms, every frequency', level: (window) => peakDb(strokeAlone(window, 0.015, false)) },
  bandPeak(15),
  bandPeak(6),
  ...[3, 6, 12, 24].map((ms) => power(ms, false)),
  ...[3, 6, 12, 24].map((ms) => power(ms, true)),
  powerLessMiss(6, 1, 0.35),
  powerLessMiss(4, 1, 0.35),
  powerLessMiss(6, 0.5, 0.35),
  powerLessMiss(3, 0.85, 0.25),
];
