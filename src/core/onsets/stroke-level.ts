import { burg } from '../signal/burg.ts';
import { covariancePrediction } from '../signal/covariance-prediction.ts';
import { energyOf } from '../signal/energy-of.ts';
import { extrapolate } from '../signal/extrapolate.ts';
import { halfBandState, splitHalfBand } from '../signal/half-band.ts';
import { applyHighPass, highPass } from '../signal/high-pass.ts';

/** Level of one stroke and what it stands on. */
export interface StrokeLevel {
  /**
   * Power of the band-limited stroke over its first milliseconds, its predecessor's tail and the noise taken off, as
   * the level of a sine of that power: dBFS, full-scale sine = 0.
   */
  readonly levelDb: number;
  /** Standard error from the sound it stands in, dB. */
  readonly levelSe: number;
}

/** Below this, rumble and handling noise; our judgement from takes on pads and drums. */
const lowHz = 150;
/** The power is taken over this much from the onset on, s. The first milliseconds belong to the stroke, not the room. */
export const levelSeconds = 0.004;
/** Sound before the stroke from which its tail is predicted, s. */
export const levelPastSeconds = 0.08;
/** The prediction ends this long before the onset, s, so that no part of the attack enters it. */
const guardSeconds = 0.0006;
const order = 48;
/** A tail with less than this share of the stroke's power moves its level by under a twentieth of a decibel. */
const tailShare = 3e-5;
/** A tail may have the power of so many times its own length before it: one length alone may fall between two beats. */
const lastLengths = 3;
/** Of a stroke that all but drowns, at least this share of the power is left. */
const leastShare = 0.25;
/** The tail dies a little between the rehearsal and the stroke; measured in rooms (see the benchmark of levels). */
const missedShare = 0.85;

/**
 * Level of the stroke whose onset lies `onset` samples into the window `samples` (at `rate` Hz; overwritten). The
 * window begins `levelPastSeconds` before the onset and ends at least `levelSeconds` after it; sound before
 * `pastFrom` (samples) is left alone. Worked at 5.5 to 11 kHz, so the band is 150 Hz to about 3 kHz at every rate.
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
  let count = samples.length & ~7;
  let levelRate = rate;
  while (levelRate >= 11_000) {
    splitHalfBand(halfBandState(), samples, count, samples, null);
    count >>= 1;
    levelRate /= 2;
  }
  applyHighPass(highPass(lowHz, levelRate), samples, count);
  const scale = levelRate / rate;
  const at = Math.max(0, Math.floor(onset * scale - guardSeconds * levelRate));
  const length = Math.min(count - at, Math.round((levelSeconds + guardSeconds) * levelRate));
  const from = Math.max(0, Math.ceil(pastFrom * scale));
  const past = at - from;

  let missed = 0;
  let tail: Float32Array | null = null;
  const recent = Math.min(past, length);
  let ringing = 0;
  for (let i = at - recent; i < at; i++) ringing += samples[i]! ** 2;
  let raw = 1e-14;
  for (let i = at; i < at + length; i++) raw += samples[i]! ** 2;
  if (past > 2 * order + length && ringing > tailShare * raw) {
    const last = energyOf(samples, Math.max(from, at - lastLengths * length), at);
    const closest = tailBy(covariancePrediction(samples, from + order, at, order), samples, at, length);
    const steady = closest.energy <= last && closest.missed <= last;
    // A tail dies away: a prediction louder than the ringing before it has run away, which Burg's never does.
    const chosen = steady ? closest : tailBy(burg(samples, from, at, order), samples, at, length);
    tail = chosen.tail;
    missed = chosen.missed;
  } else if (past > 0) {
    for (let i = from; i < at; i++) missed += (samples[i]! ** 2 * length) / past;
  }
  let energy = 1e-14;
  for (let i = 0; i < length; i++) energy += (samples[at + i]! - (tail?.[i] ?? 0)) ** 2;
  const stroke = Math.max(energy - missedShare * missed, leastShare * energy);
  return {
    levelDb: 10 * Math.log10((2 * stroke) / (levelSeconds * levelRate)),
    levelSe: levelError(stroke, missed, length),
  };
}

/** A predicted tail, its energy, and the energy that the same prediction misses when made so much earlier. */
function tailBy(coefficients: Float64Array, samples: Float32Array, at: number, length: number) {
  const tail = extrapolate(coefficients, samples, at, length);
  const rehearsal = extrapolate(coefficients, samples, at - length, length);
  let missed = 0;
  for (let i = 0; i < length; i++) missed += (samples[at - length + i]! - rehearsal[i]!) ** 2;
  return { tail, energy: energyOf(tail), missed };
}

/** The stroke's power stands in the cross term with what was left of the tail, and in the spread of that itself. */
function levelError(stroke: number, missed: number, length: number): number {
  const share = missed / stroke;
  const independent = Math.max(4, length / 3);
  return (10 / Math.LN10) * Math.sqrt((2 * share) / independent + (2 * share * share) / independent);
}
