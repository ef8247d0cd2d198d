import { covariancePrediction } from './covariance-prediction.ts';
import { energyOf } from './energy-of.ts';
import { halfBandState, splitHalfBand } from './half-band.ts';
import { predictionResidual } from './prediction-residual.ts';
import type { Source } from './source.ts';

/** The lower part of a recording's spectrum: flat up to two fifths of its own rate, 3.2 to 6.4 kHz. */
interface LowSound {
  /** Of `samples`, Hz: at least 8 kHz and under 16 kHz; a recording's own where that is under 16 kHz already. */
  readonly rate: number;
  /** Time of the first sample, s. */
  readonly start: number;
  readonly samples: Float32Array;
}

/** Sound read ahead of the stretch for the filters to settle, s. */
const settleSeconds = 0.01;
/**
 * Delay of a halving, in samples of its input: about that in the middle of the band kept and of an impulse's peak. The
 * lowest frequencies are delayed by 1.29 and so read up to 0.06 ms early, the highest late.
 */
const halvingDelay = 1.9;

/**
 * Reads the lower part of the spectrum from `from` to `to` (s), halved in rate as often as goes. `start` has the
 * filters' delay taken off; silence is read over the recording's ends. Causal: nothing sounds ahead of an attack. Costs
 * a few operations a sample.
 *
 * @example lowSound(source, 0.2, 0.5).rate // 12000 for a source at 48000
 */
export function lowSound(source: Source, from: number, to: number): LowSound {
  const halvings = Math.max(0, Math.floor(Math.log2(source.sampleRate / 8000)));
  const factor = 2 ** halvings;
  const rate = source.sampleRate / factor;
  const lead = Math.round(settleSeconds * rate);
  const first = Math.round(from * rate);
  const last = Math.max(first, Math.round(to * rate));
  const sound = source.read(0, (first - lead) * factor, last * factor);
  let length = sound.length;
  let delay = 0;
  for (let h = 0; h < halvings; h++) {
    splitHalfBand(halfBandState(), sound, length, sound, null);
    length >>= 1;
    delay += (halvingDelay * 2 ** h) / source.sampleRate;
  }
  return { rate, start: first / rate - delay, samples: sound.slice(lead, length) };
}

/** What in a sound its own past doesn't predict. */
export interface FreshSound {
  /** At the rate of the sound. */
  readonly samples: Float64Array;
  /** Mean power of the unpredictable part just before: of white noise about 6 % too little, being fitted to it. */
  readonly noise: number;
}

/** Order, fitted past and the part of it that tells the noise (s); chosen by measuring soft strokes in wire tails. */
const ringing = { order: 40, pastSeconds: 0.06, noiseSeconds: 0.03 };
/** Sound needed before a place from which to predict, s. */
export const ringingSeconds = 0.066;

/**
 * Innovation e[n] = x[n] − Σ a[k]·x[n−1−k] of `count` samples from index `at` on; the coefficients are fitted to what
 * came before `at` and to nothing after (`covariance-prediction.ts`). Needs `ringingSeconds` before `at` at 8 kHz or more,
 * and `count` samples from it on.
 *
 * @example freshAfter(lowSound(source, 0.9, 1.1), 1000, 200).samples.length // 200
 */
export function freshAfter({ rate, samples }: LowSound, at: number, count: number): FreshSound {
  const { order } = ringing;
  const past = Math.round(ringing.pastSeconds * rate);
  const recent = Math.round(ringing.noiseSeconds * rate);
  const a = covariancePrediction(samples, at - past, at, order);
  const before = predictionResidual(a, samples, at - recent, at, new Float64Array(recent));
  const fresh = predictionResidual(a, samples, at, at + count, new Float64Array(count));
  return { samples: fresh, noise: energyOf(before) / recent + 1e-14 };
}
