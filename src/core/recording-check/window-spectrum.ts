import FFT from 'fft.js';
import type { Source } from '../signal/source.ts';

/** Spectra of short windows of a recording. */
interface WindowSpectrum {
  /** Samples of a window, a power of two; bin i lies at i · sample rate / size, Hz. */
  readonly size: number;
  /** Power of bins 0 … size / 2 − 1 of the window that begins at a sample; the next call fills the same array. */
  powerAt(from: number): Float64Array;
}

/**
 * Spectra of a recording's first channel through a sine-squared window of about so many seconds: a sine at full scale
 * on a bin has power (size / 4)².
 *
 * @example windowSpectrum(source, 0.02).size // 1024 at 48 kHz
 */
export function windowSpectrum(source: Source, seconds: number): WindowSpectrum {
  const size = 2 ** Math.round(Math.log2(seconds * source.sampleRate));
  const fft = new FFT(size);
  const spectrum = fft.createComplexArray();
  const frame = new Array<number>(size);
  const window = Float64Array.from({ length: size }, (_, i) => Math.sin((Math.PI * (i + 0.5)) / size) ** 2);
  const power = new Float64Array(size / 2);
  return {
    size,
    powerAt(from) {
      const samples = source.read(0, from, from + size);
      for (let i = 0; i < size; i++) frame[i] = samples[i]! * window[i]!;
      fft.realTransform(spectrum, frame);
      for (let bin = 0; bin < power.length; bin++)
        power[bin] = spectrum[2 * bin]! ** 2 + spectrum[2 * bin + 1]! ** 2;
      return power;
    },
  };
}
