import { describe, expect, it } from 'vitest';
import { atGain, peakFollower, usualGain } from '../../../src/core/signal/usual-gain.ts';
import { floatSource } from '../../support/float-source.ts';

const rate = 48_000;
const sine = (peak: number, level = 0) =>
  Float32Array.from({ length: rate }, (_, i) => level + peak * Math.sin((2 * Math.PI * 440 * i) / rate));

describe('peakFollower', () => {
  it.each([0, 0.3, -0.3])('hears half the distance of the extremes, at a steady level of %d too', (level) => {
    expect(peakFollower()(floatSource(rate, sine(0.02, level)))).toBeCloseTo(0.02, 4);
  });

  it('hears the same however the recording comes', () => {
    const samples = sine(0.2).map((x, i) => (x * i) / rate);
    const follow = peakFollower();
    for (const length of [0, 1, 1023, 1025, 5000, 5001, 30_000]) {
      const peak = follow(floatSource(rate, samples.slice(0, length)));
      expect(peak).toBe(peakFollower()(floatSource(rate, samples.slice(0, length))));
    }
    expect(follow(floatSource(rate, samples))).toBe(peakFollower()(floatSource(rate, samples)));
  });
});

describe('usualGain and atGain', () => {
  it('bring a recording within 3 dB of -10 dBFS by a power of two', () => {
    for (const peak of [1, 0.5, 0.011, 0.00316]) {
      const gain = usualGain(peak);
      expect(Number.isInteger(Math.log2(gain))).toBe(true);
      expect(Math.abs(20 * Math.log10(peak * gain) + 10)).toBeLessThan(3.02);
      expect([...atGain(floatSource(rate, Float32Array.of(peak)), gain).read(0, 0, 1)]).toEqual([
        Math.fround(Math.fround(peak) * gain),
      ]);
    }
    expect(usualGain(0.00316)).toBe(128);
  });

  it('leave silence and nothing as they are', () => {
    expect(usualGain(peakFollower()(floatSource(rate, new Float32Array(rate))))).toBe(1);
    expect(usualGain(peakFollower()(floatSource(rate, new Float32Array(0))))).toBe(1);
  });
});
