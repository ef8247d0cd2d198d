import FFT from 'fft.js';
import type { Source } from '../signal/source.ts';

const windowSeconds = 0.02;
const most = 24;
const fewest = 6;
const leastPower = 1e-16;

/** Mean spectrum of stretches of 20 ms. */
export interface MeanSpectrum {
  /** dB by bin, and the bins' distance, Hz. */
  readonly powerDb: Float64Array;
  readonly stepHz: number;
}

/** Spectrum of the stretches that begin at some times, s; null where they are too few. */
export function meanSpectrum(source: Source, times: readonly number[]): MeanSpectrum | null {
  if (times.length < fewest) return null;
  const step = Math.max(1, Math.floor(times.length / most));
  const some = times.filter((_, i) => i % step === 0);
  const { sampleRate } = source;
  const size = 2 ** Math.round(Math.log2(windowSeconds * sampleRate));
  const fft = new FFT(size);
  const spectrum = fft.createComplexArray();
  const frame = new Array<number>(size);
  const power = new Float64Array(size / 2);
  for (const time of some) {
    const from = Math.round(time * sampleRate);
    const samples = source.read(0, from, from + size);
    for (let i = 0; i < size; i++) frame[i] = samples[i]! * Math.sin((Math.PI * (i + 0.5)) / size) ** 2;
    fft.realTransform(spectrum, frame);
    for (let bin = 0; bin < power.length; bin++)
      power[bin]! += spectrum[2 * bin]! ** 2 + spectrum[2 * bin + 1]! ** 2;
  }
  return {
    powerDb: power.map((value) => 10 * Math.log10(value / some.length + leastPower)),
    stepHz: sampleRate / size,
  };
}
