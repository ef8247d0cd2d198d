import { describe, expect, it } from 'vitest';
import { delayed, readAt } from '../../../src/core/signal/fractional-read.ts';
import { floatSource } from '../../support/float-source.ts';
import { sine } from '../../support/signals.ts';

const rate = 48_000;

/** Places are told to a 256th of a sample, so a curve is read at most a 512th away. */
const steepest = (hz: number) => (2 * Math.PI * hz) / rate / 512;

describe('readAt', () => {
  it.each([50, 440, 1000, 5000, 12_000])('reads a sine of %i Hz between its samples', (hz) => {
    const source = floatSource(rate, sine(4800, rate, hz, 1, 0.4));
    for (const time of [0.01, 0.020003, 0.0300071, 0.0512345, 1 / 30]) {
      readAt(source, time, 40).forEach((value, n) => {
        const exact = Math.sin(2 * Math.PI * hz * (time + n / rate) + 0.4);
        expect(Math.abs(value - exact)).toBeLessThan(steepest(hz) + 0.001);
      });
    }
  });

  it('gives the samples themselves at their own places, and silence outside', () => {
    const noise = Float32Array.from({ length: 100 }, (_, n) => Math.sin(n * n));
    const source = floatSource(rate, noise);
    readAt(source, 30 / rate, 10).forEach((value, n) => {
      expect(value).toBeCloseTo(noise[30 + n]!, 6);
    });
    expect(readAt(source, -0.01, 50)).toEqual(new Float32Array(50));
    expect(readAt(source, 0.5, 50)).toEqual(new Float32Array(50));
  });
});

describe('delayed', () => {
  const bump = (n: number) => Math.exp(-(((n - 40) / 6) ** 2)) * Math.cos((n - 40) / 3);
  const samples = Float32Array.from({ length: 80 }, (_, n) => bump(n));

  it.each([0, 0.125, 0.31, 0.5, 0.77, 1])('moves a curve later by %f samples', (offset) => {
    const moved = delayed(samples, offset);
    expect(moved.length).toBe(81);
    moved.forEach((value, n) => {
      expect(Math.abs(value - bump(n - offset))).toBeLessThan(0.4 / 512 + 0.0005);
    });
  });

  it('undoes readAt: what was taken from a place lies there again', () => {
    const curve = (t: number) => Math.exp(-(((t - 0.01) / 0.001) ** 2));
    const source = floatSource(
      rate,
      Float32Array.from({ length: 960 }, (_, n) => curve(n / rate)),
    );
    const start = 0.0057123;
    const from = Math.floor(start * rate);
    const back = delayed(readAt(source, start, 400), start * rate - from);
    for (let n = 20; n < 380; n++) expect(Math.abs(back[n]! - curve((from + n) / rate))).toBeLessThan(2e-4);
  });
});
