import { crossProducts } from './cross-products.ts';
import type { Source } from './source.ts';

const reach = 8;
const phases = 256;

/** Windowed-sinc weights for reading between samples, `phases` steps a sample. */
const weights = Array.from({ length: phases + 1 }, (_, phase) => {
  const row = new Float64Array(2 * reach);
  for (let k = 0; k < row.length; k++) {
    const x = k - reach + 1 - phase / phases;
    const sinc = x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
    row[k] = sinc * Math.cos((Math.PI * x) / (2 * reach + 1)) ** 2;
  }
  return row;
});

/** `count` samples of a one-channel recording from `time` (s) on, at the recording's own spacing: read between samples. */
export function readAt(source: Source, time: number, count: number): Float32Array {
  const position = time * source.sampleRate;
  const base = Math.floor(position);
  return shifted(source.read(0, base - reach + 1, base + count + reach), position - base, count);
}

/** `count` values at `offset` (0 … 1) past each sample; the first stands `reach − 1` samples into `samples`. */
function shifted(samples: Float32Array, offset: number, count: number): Float32Array {
  return new Float32Array(crossProducts(weights[Math.round(offset * phases)]!, samples, 2 * reach, count));
}

/** Offsets that give the same number are read as one: curves delayed by them are equal. */
export const delayStep = (offset: number): number => Math.round((1 - offset) * phases);

/** The same curve moved later by `offset` samples (0 … 1), silence around it. */
export function delayed(samples: Float32Array, offset: number): Float32Array {
  const padded = new Float32Array(samples.length + 2 * reach + 1);
  padded.set(samples, reach);
  // A value at n of the delayed curve is the curve's value at n − offset = (n − 1) + (1 − offset).
  return shifted(padded, 1 - offset, samples.length + 1);
}
