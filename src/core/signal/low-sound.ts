import { covariancePrediction } from './covariance-prediction.ts';
import { halfBandState, splitHalfBand } from './half-band.ts';
import type { Source } from './source.ts';

/** A stretch of a recording below about 5 kHz. */
export interface LowSound {
  /** Of `samples`, Hz: from 8 kHz to just under 16 kHz. */
  readonly rate: number;
  /** Time of the first sample, s. */
  readonly start: number;
  readonly samples: Float32Array;
}

/** Sound read ahead of the stretch for the filters to settle, s. */
const settleSeconds = 0.01;
/** Delay of a halving at low frequencies, in samples of its input. */
const halvingDelay = 1.9;

/** Reads the lower part of the spectrum from `from` to `to` (s), halved in rate as often as goes. */
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
  readonly samples: Float64Array;
  /** Mean power of the unpredictable part just before. */
  readonly noise: number;
}

/** Order, fitted past and the part of it that tells the noise (s); chosen by measuring soft strokes in wire tails. */
const ringing = { order: 40, pastSeconds: 0.06, noiseSeconds: 0.03 };
/** Sound needed before a place from which to predict, s. */
export const ringingSeconds = 0.066;

/** Innovation of `count` samples from index `at` on, predicted from what came before `at` and from nothing after. */
export function freshAfter({ rate, samples }: LowSound, at: number, count: number): FreshSound {
  const { order } = ringing;
  const past = Math.round(ringing.pastSeconds * rate);
  const recent = Math.round(ringing.noiseSeconds * rate);
  const a = covariancePrediction(samples, at - past, at, order);
  const residual = (n: number): number => {
    let e = samples[n]!;
    for (let k = 0; k < order; k++) e -= a[k]! * samples[n - 1 - k]!;
    return e;
  };
  let power = 0;
  for (let n = at - recent; n < at; n++) power += residual(n) ** 2;
  const fresh = new Float64Array(count);
  for (let i = 0; i < count; i++) fresh[i] = residual(at + i);
  return { samples: fresh, noise: power / recent + 1e-14 };
}
