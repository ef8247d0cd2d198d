import { burg, extrapolate } from '../signal/burg.ts';
import { halfBandState, splitHalfBand } from '../signal/half-band.ts';
import { applyHighPass, highPass } from '../signal/high-pass.ts';

/** Level of one stroke and what it stands on. */
export interface StrokeLevel {
  /** Peak of the band-limited stroke, its predecessor's tail taken off, dBFS (a full-scale sine's peak = 0). */
  readonly levelDb: number;
  /** Ratio of the stroke's peak to the sound it stands in that could not be predicted, dB. */
  readonly clearanceDb: number;
}

/** Below this, rumble and handling noise; our judgement from takes on pads and drums. */
const lowHz = 150;
/** Sound before the stroke from which its tail is predicted, and the window in which the peak is looked for, s. */
export const levelPastSeconds = 0.07;
export const levelPeakSeconds = 0.015;
/** The prediction ends this long before the onset, s, so that no part of the attack enters it. */
const guardSeconds = 0.0006;
const order = 32;
const phases = 4;

/**
 * Level of the stroke whose onset lies `onset` samples into the window `samples` (at `rate` Hz; overwritten). The
 * window begins `levelPastSeconds` before the onset (or later, at the previous stroke) and ends at least
 * `levelPeakSeconds` after it. Worked at 11 to 16 kHz, so the band is 150 Hz to about 6 kHz at every sample rate.
 */
export function strokeLevel(samples: Float32Array, rate: number, onset: number, pastFrom: number): StrokeLevel {
  let count = samples.length & ~7;
  let levelRate = rate;
  let divisor = 1;
  while (levelRate >= 22_000) {
    splitHalfBand(halfBandState(), samples, count, samples, null);
    count >>= 1;
    levelRate /= 2;
    divisor *= 2;
  }
  applyHighPass(highPass(lowHz, levelRate), samples, count);
  const at = Math.floor(onset / divisor - guardSeconds * levelRate);
  const length = Math.min(count - at, Math.ceil((levelPeakSeconds + guardSeconds) * levelRate));
  const from = Math.max(0, Math.ceil(pastFrom / divisor));
  const past = at - from;
  let tail: Float32Array | null = null;
  let unpredicted = 1e-12;
  if (past > 3 * order) {
    const coefficients = burg(samples, from, at, order);
    tail = extrapolate(coefficients, samples, at, length);
    for (let i = at - 2 * order; i < at; i++) {
      let x = samples[i]!;
      for (let k = 0; k < order; k++) x -= coefficients[k]! * samples[i - 1 - k]!;
      unpredicted += (x * x) / (2 * order);
    }
  }
  const stroke = new Float32Array(length);
  for (let i = 0; i < length; i++) stroke[i] = samples[at + i]! - (tail?.[i] ?? 0);
  const peak = interpolatedPeak(stroke);
  return {
    levelDb: 20 * Math.log10(Math.max(peak, 1e-7)),
    clearanceDb: 20 * Math.log10(Math.max(peak, 1e-7)) - 10 * Math.log10(unpredicted),
  };
}

const reach = 6;
const kernels = Array.from({ length: phases }, (_, phase) => {
  const kernel = new Float64Array(2 * reach);
  for (let k = 0; k < kernel.length; k++) {
    const x = k - reach + 1 - phase / phases;
    kernel[k] = x === 0 ? 1 : (Math.sin(Math.PI * x) / (Math.PI * x)) * Math.cos((Math.PI * x) / (2 * reach)) ** 2;
  }
  return kernel;
});

/** Largest magnitude of the curve through the samples, at quarter-sample steps round the largest samples. */
function interpolatedPeak(samples: Float32Array): number {
  let peak = 0;
  for (let i = 0; i < samples.length; i++) peak = Math.max(peak, Math.abs(samples[i]!));
  const worth = 0.8 * peak;
  for (let i = reach; i < samples.length - reach; i++) {
    if (Math.abs(samples[i]!) < worth) continue;
    for (let base = i - 1; base <= i; base++) {
      for (let phase = 1; phase < phases; phase++) {
        const kernel = kernels[phase]!;
        let sum = 0;
        for (let k = 0; k < 2 * reach; k++) sum += kernel[k]! * (samples[base - reach + 1 + k] ?? 0);
        if (Math.abs(sum) > peak) peak = Math.abs(sum);
      }
    }
  }
  return peak;
}
