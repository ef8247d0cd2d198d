import Meyda from 'meyda';
import type { Source } from '../signal/source.ts';

/** What tells kinds of sound apart once they are known not to be the pad's. */
interface SoundCharacter {
  /** Centre of gravity of the spectrum of the first 20 ms or so, Hz (Meyda's spectral centroid). */
  readonly centroidHz: number;
  /** Largest normalised autocorrelation at the periods of a voice, 75 to 350 Hz, over the first 60 ms. */
  readonly voicing: number;
  /** Power from 30 to 60 ms against the first 30 ms, dB: near 0 or above for what is held, far below for what is hit. */
  readonly heldDb: number;
}

const voiceHz = { lowest: 75, highest: 350 };
const halfSeconds = 0.03;

/** Character of the sound that begins at `time` (s) in a one-channel recording. */
export function soundCharacter(source: Source, time: number): SoundCharacter {
  const rate = source.sampleRate;
  const half = Math.round(halfSeconds * rate);
  const from = Math.round(time * rate);
  const samples = source.read(0, from, from + 2 * half);
  // Meyda takes powers of two, and its centroid comes in bins.
  const frame = 2 ** Math.floor(Math.log2(0.024 * rate));
  Meyda.sampleRate = rate;
  Meyda.bufferSize = frame;
  Meyda.windowingFunction = 'hanning';
  const found = Meyda.extract(['spectralCentroid'], samples.subarray(0, frame));
  const centroid = found?.spectralCentroid ?? 0;
  const power = (a: number, b: number) => {
    let sum = 1e-20;
    for (let i = a; i < b; i++) sum += samples[i]! ** 2;
    return sum;
  };
  return {
    centroidHz: Number.isFinite(centroid) ? (centroid * rate) / frame : 0,
    voicing: voicing(samples, rate),
    heldDb: 10 * Math.log10(power(half, 2 * half) / power(0, half)),
  };
}

function voicing(samples: Float32Array, rate: number): number {
  const shortest = Math.floor(rate / voiceHz.highest);
  const longest = Math.min(samples.length >> 1, Math.ceil(rate / voiceHz.lowest));
  const step = Math.max(1, Math.round(rate / 12_000));
  let best = 0;
  for (let lag = shortest; lag <= longest; lag += step) {
    let product = 0;
    let a = 1e-20;
    let b = 1e-20;
    for (let i = lag; i < samples.length; i += step) {
      product += samples[i]! * samples[i - lag]!;
      a += samples[i]! ** 2;
      b += samples[i - lag]! ** 2;
    }
    best = Math.max(best, product / Math.sqrt(a * b));
  }
  return best;
}
