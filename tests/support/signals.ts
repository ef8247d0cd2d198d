import { seeded } from '../../fixtures/generator/random.ts';

/** Amplitude and frequency of a steady sine as samples. */
export function sine(length: number, sampleRate: number, hz: number, amplitude = 1, phase = 0): Float32Array {
  return Float32Array.from(
    { length },
    (_, n) => amplitude * Math.sin((2 * Math.PI * hz * n) / sampleRate + phase),
  );
}

/** White Gaussian noise of the standard deviation asked for. */
export function whiteNoise(length: number, deviation: number, seed: number): Float32Array {
  const random = seeded(seed);
  return Float32Array.from({ length }, () => random.normal(0, deviation));
}

/** Mean square of `samples[from … to)`. */
export function power(samples: ArrayLike<number>, from = 0, to = samples.length): number {
  let sum = 0;
  for (let n = from; n < to; n++) sum += samples[n]! ** 2;
  return sum / (to - from);
}

export const toDb = (ratio: number): number => 10 * Math.log10(ratio);
