import FFT from 'fft.js';
import type { TestPulse } from './test-pulse.ts';

const blockLength = 8192;

/**
 * How strong a test pulse that begins at each sample would be: the matched filter's magnitude, normalised so that a
 * pulse of size a, undistorted, gives a at its first sample. One value a sample; overlap-save through blocks of 8192.
 *
 * @example pulseStrength(samples, testPulse(48000)).length // samples.length
 */
export function pulseStrength(samples: Float32Array, { cosine, sine }: TestPulse): Float32Array {
  const fft = new FFT(blockLength);
  const length = cosine.length;
  const energy = cosine.reduce((sum, x) => sum + x * x, 0);
  const pulse = fft.createComplexArray();
  for (let n = 0; n < length; n++) {
    pulse[2 * n] = cosine[n]! / energy;
    pulse[2 * n + 1] = sine[n]! / energy;
  }
  const filter = fft.createComplexArray();
  fft.transform(filter, pulse);

  const strength = new Float32Array(samples.length);
  const step = blockLength - length + 1;
  const block = fft.createComplexArray();
  const spectrum = fft.createComplexArray();
  const out = fft.createComplexArray();
  for (let from = 0; from < samples.length; from += step) {
    block.fill(0);
    const end = Math.min(blockLength, samples.length - from);
    for (let n = 0; n < end; n++) block[2 * n] = samples[from + n]!;
    fft.transform(spectrum, block);
    // Correlation: the spectrum times the conjugate of the pulse's.
    for (let k = 0; k < 2 * blockLength; k += 2) {
      const [a, b, c, d] = [spectrum[k]!, spectrum[k + 1]!, filter[k]!, -filter[k + 1]!];
      spectrum[k] = a * c - b * d;
      spectrum[k + 1] = a * d + b * c;
    }
    fft.inverseTransform(out, spectrum);
    for (let n = 0; n < Math.min(step, samples.length - from); n++) {
      strength[from + n] = Math.hypot(out[2 * n]!, out[2 * n + 1]!);
    }
  }
  return strength;
}
