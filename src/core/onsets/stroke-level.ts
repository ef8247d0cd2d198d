import { burg } from '../signal/burg.ts';
import { covariancePrediction } from '../signal/covariance-prediction.ts';
import { energyOf } from '../signal/energy-of.ts';
import { extrapolate } from '../signal/extrapolate.ts';
import { levelError } from './level-error.ts';
import { toStrokeBand } from './stroke-band.ts';

/** Level of one stroke and what it stands on. */
interface StrokeLevel {
  /**
   * Power of the band-limited stroke over its first milliseconds, its predecessor's tail and the noise taken off, as
   * the level of a sine of that power: dBFS, full-scale sine = 0.
   */
  readonly levelDb: number;
  /** Standard error from the sound it stands in, dB. */
  readonly levelSe: number;
  /** How the level changes with the place of the onset, dB/s: an onset read late hears so much more of the end. */
  readonly slope: number;
}

/** The power is taken over this much from the onset on, s. The first milliseconds belong to the stroke, not the room. */
export const levelSeconds = 0.004;
/** Sound before the stroke from which its tail is predicted, s. */
export const levelPastSeconds = 0.08;
/** The prediction ends this long before the onset, s, so that no part of the attack enters it. */
const guardSeconds = 0.0006;
/** Over so much of the stroke's end its power is taken there, s. */
const endSeconds = 0.001;
/** Order of the prediction. Measured on 25 rendered takes: 24 to 96 give median errors of 0.026 to 0.023 dB. */
const order = 48;
/** A tail with less than this share of the stroke's power moves its level by under a twentieth of a decibel. */
const tailShare = 3e-5;
/** A tail may have the power of so many times its own length before it: one length alone may fall between two beats. */
const lastLengths = 3;
/** Of a stroke that all but drowns, at least this share of the power is left. */
const leastShare = 0.25;
/** The tail dies a little between the rehearsal and the stroke; measured in rooms (see the benchmark of levels). */
const missedShare = 0.9;

/**
 * Level of the stroke whose onset lies `onset` samples into the window `samples` (at `rate` Hz; overwritten). The
 * window begins `levelPastSeconds` before the onset and ends at least `levelSeconds` after it; sound before
 * `pastFrom` (samples) is left alone. Worked in the strokes' own band (`stroke-band.ts`).
 *
 * The tail of what came before is extrapolated by linear prediction and subtracted; how far the same extrapolation
 * misses just before the onset says how much power it leaves, and that is taken off too.
 */
export function strokeLevel(
  samples: Float32Array,
  rate: number,
  onset: number,
  pastFrom: number,
): StrokeLevel {
  const { count, rate: levelRate } = toStrokeBand(samples, rate);
  const scale = levelRate / rate;
  const at = Math.max(0, Math.floor(onset * scale - guardSeconds * levelRate));
  // The last sample counts by the part of it that lies within, so that no level hangs on where the samples fall.
  const until = Math.min(count, onset * scale + levelSeconds * levelRate);
  const length = Math.ceil(until) - at;
  const lastShare = until - (at + length - 1);
  const from = Math.max(0, Math.ceil(pastFrom * scale));
  const past = at - from;

  const recent = Math.min(past, length);
  let left: Float32Array = samples.slice(at - recent, at);
  let raw = 1e-14;
  for (let i = at; i < at + length; i++) raw += samples[i]! ** 2;
  let missed = 0;
  let tail: Float32Array | null = null;
  if (past > 2 * order + length && energyOf(left) > tailShare * raw) {
    const last = energyOf(samples, Math.max(from, at - lastLengths * length), at);
    const closest = tailBy(covariancePrediction(samples, from + order, at, order), samples, at, length);
    const steady = energyOf(closest.tail) <= last && energyOf(closest.left) <= last;
    // A tail dies away: a prediction louder than the ringing before it has run away, which Burg's never does.
    const chosen = steady ? closest : tailBy(burg(samples, from, at, order), samples, at, length);
    tail = chosen.tail;
    left = chosen.left;
    missed = energyOf(left);
  } else if (past > 0) {
    for (let i = from; i < at; i++) missed += (samples[i]! ** 2 * length) / past;
  }
  const end = Math.max(1, Math.round(endSeconds * levelRate));
  const found = samples.slice(at, at + length);
  if (tail !== null) for (let i = 0; i < length; i++) found[i]! -= tail[i]!;
  const energy = 1e-14 + energyOf(found) - (1 - lastShare) * (found.at(-1) ?? 0) ** 2;
  const stroke = Math.max(energy - missedShare * missed, leastShare * energy);
  return {
    levelDb: 10 * Math.log10((2 * stroke) / (levelSeconds * levelRate)),
    levelSe: levelError({ stroke, missed, found, left }),
    slope: (10 / Math.LN10) * (energyOf(found, Math.max(0, length - end)) / end) * (levelRate / stroke),
  };
}

/** A predicted tail, and what the same prediction leaves when made so much earlier. */
function tailBy(coefficients: Float64Array, samples: Float32Array, at: number, length: number) {
  const tail = extrapolate(coefficients, samples, at, length);
  const left = extrapolate(coefficients, samples, at - length, length);
  for (let i = 0; i < length; i++) left[i] = samples[at - length + i]! - left[i]!;
  return { tail, left };
}
