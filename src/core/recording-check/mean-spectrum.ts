import type { Source } from '../signal/source.ts';
import { windowSpectrum } from './window-spectrum.ts';

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
  const { size, powerAt } = windowSpectrum(source, windowSeconds);
  const power = new Float64Array(size / 2);
  for (const time of some) {
    const here = powerAt(Math.round(time * sampleRate));
    for (let bin = 0; bin < power.length; bin++) power[bin]! += here[bin]!;
  }
  return {
    powerDb: power.map((value) => 10 * Math.log10(value / some.length + leastPower)),
    stepHz: sampleRate / size,
  };
}
