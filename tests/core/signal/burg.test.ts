import { describe, expect, it } from 'vitest';
import { burg } from '../../../src/core/signal/burg.ts';
import { extrapolate } from '../../../src/core/signal/extrapolate.ts';
import { power, whiteNoise } from '../../support/signals.ts';

describe('burg', () => {
  it('knows a sinusoid by its recursion x[n] = 2cos(ω)·x[n−1] − x[n−2]', () => {
    const omega = 0.7;
    const a = burg(
      Float32Array.from({ length: 4000 }, (_, n) => Math.cos(omega * n)),
      0,
      4000,
      2,
    );
    expect(a[0]).toBeCloseTo(2 * Math.cos(omega), 3);
    expect(a[1]).toBeCloseTo(-1, 5);
  });

  it('takes its first step by hand', () => {
    // k = 2·Σ x[n]x[n−1] / Σ (x[n]² + x[n−1]²) over 1, 2, 2: 2·(2 + 4)/(5 + 8).
    expect(burg(Float32Array.of(1, 2, 2), 0, 3, 1)[0]).toBeCloseTo(12 / 13, 12);
    expect(burg(Float32Array.of(9, 9, 1, 2, 2, 9), 2, 5, 1)[0]).toBeCloseTo(12 / 13, 12);
  });

  it('finds an autoregression from its noise', () => {
    const noise = whiteNoise(40_000, 1, 5);
    const x = new Float32Array(40_000);
    for (let n = 0; n < x.length; n++) x[n] = noise[n]! + 1.5 * (x[n - 1] ?? 0) - 0.8 * (x[n - 2] ?? 0);
    const a = burg(x, 0, x.length, 2);
    const error = Math.sqrt((1 - 0.8 ** 2) / x.length);
    expect(Math.abs(a[0]! - 1.5)).toBeLessThan(4 * error);
    expect(Math.abs(a[1]! + 0.8)).toBeLessThan(4 * error);
  });

  it('is never unstable: what it extrapolates does not grow', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const past = whiteNoise(300, 0.5, seed);
      const future = extrapolate(burg(past, 0, 300, 48), past, 300, 4000);
      expect(power(future, 3000)).toBeLessThan(power(past));
    }
  });
});
