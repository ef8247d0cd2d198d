import { describe, expect, it } from 'vitest';
import { toStrokeBand } from '../../../src/core/onsets/stroke-band.ts';
import { power, sine, toDb } from '../../support/signals.ts';

/** What is left of a sine's power, dB. */
function left(rate: number, hz: number): number {
  const samples = sine(rate, rate, hz);
  const whole = power(samples);
  const { count } = toStrokeBand(samples, rate);
  return toDb(power(samples.subarray(count >> 1, count)) / whole);
}

describe('toStrokeBand', () => {
  it.each([
    [48_000, 6000],
    [44_100, 5512.5],
    [192_000, 6000],
    [32_000, 8000],
    [11_025, 5512.5],
    [8000, 8000],
  ])('works on a recording at %i Hz at %d Hz', (rate, own) => {
    const told = toStrokeBand(new Float32Array(rate / 25), rate);
    expect(told.rate).toBe(own);
    expect(Math.abs(told.count - own / 25)).toBeLessThan(8);
  });

  it('keeps what lies within, and halves the power at its lower edge (Butterworth)', () => {
    for (const rate of [8000, 44_100, 48_000]) {
      expect(Math.abs(left(rate, 1000))).toBeLessThan(0.1);
      expect(left(rate, 150)).toBeCloseTo(-3.01, 1);
      expect(left(rate, 30)).toBeLessThan(-25);
    }
    expect(left(48_000, 6000)).toBeLessThan(-60);
  });
});
