import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addRiseEvidence,
  meanBetween,
  prefixSums,
  riseEvidence,
  silencePower,
} from '../../../src/core/onsets/rise-evidence.ts';
import { whiteNoise } from '../../support/signals.ts';

const perFrame = 8;
const step = (before: number, after: number) =>
  prefixSums(Float32Array.from({ length: 60 }, (_, f) => (f < 30 ? before : after)));

describe('prefixSums and meanBetween', () => {
  it('give the mean of any stretch', () => {
    const sums = prefixSums(Float32Array.of(1, 2, 3, 4));
    expect([...sums]).toEqual([0, 1, 3, 6, 10]);
    expect(meanBetween(sums, 1, 3)).toBeCloseTo(2.5, 8);
    expect(meanBetween(prefixSums(new Float32Array(9)), 2, 5)).toBe(silencePower);
  });
});

describe('riseEvidence', () => {
  it('is nothing where nothing rises', () => {
    expect(riseEvidence(prefixSums(new Float32Array(40).fill(1)), 8, 20)).toBe(0);
    expect(riseEvidence(step(1, 0.01), perFrame, 30)).toBe(0);
    expect(riseEvidence(step(0, 0), perFrame, 30)).toBe(0);
  });

  it('is the ratio of the likelihoods of Gaussian samples with two variances and with one', () => {
    // Best log-likelihood of n samples of mean square v: −n/2·(ln v + 1), from the Gaussian density.
    const best = (n: number, v: number) => (-n / 2) * (Math.log(v) + 1);
    for (const rise of [1.6, 2, 2.5]) {
      // Small rises stay far from the cap, and there the longest stretches say most.
      const [n1, n2] = [16 * perFrame, 12 * perFrame];
      const one = best(n1 + n2, (n1 + n2 * rise) / (n1 + n2));
      const ratio = best(n1, 1) + best(n2, rise) - one;
      expect(riseEvidence(step(1, rise), perFrame, 30)).toBeCloseTo((ratio * 120) / (ratio + 120), 2);
    }
  });

  it('does not ask how loud the recording is', () => {
    const level = fc.double({ min: 1e-5, max: 1, noNaN: true });
    fc.assert(
      fc.property(level, fc.double({ min: 1.6, max: 1000, noNaN: true }), (before, rise) => {
        const loud = riseEvidence(step(1, rise), perFrame, 30);
        expect(riseEvidence(step(before, before * rise), perFrame, 30)).toBeCloseTo(loud, 2);
      }),
    );
  });

  it('grows with the rise, and no band can shout', () => {
    const found = [1.6, 3, 10, 100, 1e4, 1e6].map((rise) => riseEvidence(step(1, rise), perFrame, 30));
    for (let i = 1; i < found.length; i++) expect(found[i]).toBeGreaterThan(found[i - 1]!);
    expect(found.at(-1)).toBeLessThan(120);
    expect(riseEvidence(step(1, 1e6), 1000, 30)).toBeLessThan(120);
  });

  it('is largest at the rise itself', () => {
    const sums = step(1, 20);
    const at = riseEvidence(sums, perFrame, 30);
    for (const frame of [20, 25, 28, 29, 31, 32, 35]) {
      expect(riseEvidence(sums, perFrame, frame)).toBeLessThan(at);
    }
  });

  it('is small in noise: chi-square powers seldom reach four nats', () => {
    const frames = 4000;
    const noise = whiteNoise(frames * perFrame, 1, 1);
    const power = Float32Array.from({ length: frames }, (_, f) => {
      let sum = 0;
      for (let i = 0; i < perFrame; i++) sum += noise[f * perFrame + i]! ** 2;
      return sum / perFrame;
    });
    const sums = prefixSums(power);
    const found = Array.from({ length: frames - 40 }, (_, f) => riseEvidence(sums, perFrame, f + 20));
    const above = (nats: number) => found.filter((value) => value > nats).length / found.length;
    // Twice the log-ratio is about chi-square with 1 degree of freedom (Wilks 1938), P(> 8) = 0.0047 each way, here
    // the best of six overlapping looks.
    expect(above(4)).toBeLessThan(6 * 0.0047);
    expect(above(4)).toBeGreaterThan(0.0001);
    expect(Math.max(...found)).toBeLessThan(12);
  });
});

describe('addRiseEvidence', () => {
  it('adds what riseEvidence finds at every frame asked for', () => {
    const power = Float32Array.from(whiteNoise(400, 1, 4), (x, f) => x * x * (f % 70 < 3 ? 300 : 1));
    const sums = prefixSums(power);
    const evidence = new Float32Array(400).fill(1);
    addRiseEvidence(sums, perFrame, 20, 380, evidence);
    const expected = new Float32Array(400).fill(1);
    for (let frame = 20; frame < 380; frame++) expected[frame]! += riseEvidence(sums, perFrame, frame);
    expect(evidence).toEqual(expected);
    expect(evidence.filter((value) => value > 1).length).toBeGreaterThan(20);
  });
});
