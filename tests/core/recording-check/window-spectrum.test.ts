import { describe, expect, it } from 'vitest';
import { windowSpectrum } from '../../../src/core/recording-check/window-spectrum.ts';
import { memorySource } from '../../bench/bench-take.ts';

const sampleRate = 48_000;
const sine = (bin: number, size: number, length: number) =>
  memorySource(
    Float32Array.from({ length }, (_, i) => Math.sin((2 * Math.PI * bin * i) / size)),
    sampleRate,
  );

describe('windowSpectrum', () => {
  it('is the example: about so many seconds, a power of two of samples', () => {
    expect(windowSpectrum(sine(1, 8, 8), 0.02).size).toBe(1024);
    expect(windowSpectrum(sine(1, 8, 8), 0.0107).size).toBe(512);
  });

  it('has all of a sine on a bin there and on the two beside it, wherever the window begins', () => {
    const { size, powerAt } = windowSpectrum(sine(40, 1024, 4096), 0.02);
    for (const from of [0, 777, 3072]) {
      const power = powerAt(from);
      expect(power).toHaveLength(size / 2);
      expect(power[40]! / (size / 4) ** 2).toBeCloseTo(1, 5);
      // The sine-squared window's own spectrum: a half of the amplitude on either side, nothing beyond.
      for (const beside of [39, 41]) expect(power[beside]! / (size / 4) ** 2).toBeCloseTo(0.25, 5);
      for (const beyond of [30, 38, 42, 200]) expect(power[beyond]! / (size / 4) ** 2).toBeLessThan(1e-9);
    }
  });
});
