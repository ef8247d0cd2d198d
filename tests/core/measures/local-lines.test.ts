import { describe, expect, it } from 'vitest';
import { localLines } from '../../../src/core/measures/local-lines.ts';

const course = (n: number, divisions: number, used?: (i: number) => boolean) => ({
  position: Float64Array.from({ length: n }, (_, i) => i / divisions),
  stretch: new Int32Array(n),
  used: Uint8Array.from({ length: n }, (_, i) => (used?.(i) === false ? 0 : 1)),
});
const column = (n: number, value: (i: number) => number) =>
  Float64Array.from({ length: n }, (_, i) => value(i));

describe('localLines', () => {
  it('keeps a straight line, with or without missing strokes, and finds its slope', () => {
    const lines = localLines(course(60, 3, (i) => i % 7 !== 3));
    const straight = column(60, (i) => 2 + 0.5 * (i / 3));
    lines.fit(straight).forEach((value, i) => {
      expect(value).toBeCloseTo(straight[i]!, 10);
    });
    for (const slope of lines.slope(straight)) expect(slope).toBeCloseTo(0.5, 10);
  });
  it.each([2, 3, 4, 6, 12])(
    'leaves no ripple from a pattern that repeats every %i triplet strokes',
    (period) => {
      const pattern = column(72, (i) => Math.cos((2 * Math.PI * (i % period)) / period + 0.3));
      const mean = column(period, (i) => pattern[i]!).reduce((a, b) => a + b, 0) / period;
      const fit = localLines(course(72, 3)).fit(pattern);
      for (let i = 6; i < 66; i++) expect(fit[i]).toBeCloseTo(mean, 10);
    },
  );
  it.each([2, 4, 8, 16])('nor every %i sixteenths', (period) => {
    const pattern = column(96, (i) => (i % period === 1 ? 1 : 0));
    const fit = localLines(course(96, 4)).fit(pattern);
    for (let i = 8; i < 88; i++) expect(fit[i]).toBeCloseTo(1 / period, 10);
  });
  it('gives the variance left in independent values', () => {
    // Twelve full weights and two halves make Σw² = 11.5/144 in the middle of triplets: 1 − 2/12 + 11.5/144.
    const variance = localLines(course(60, 3)).residualVariance[30]!;
    expect(variance).toBeCloseTo(1 - 2 / 12 + 11.5 / 144, 10);
  });
  it('says where there is too little to draw a line through', () => {
    expect([...localLines(course(3, 3)).possible]).toEqual([0, 0, 0]);
    const apart = { ...course(8, 3), stretch: Int32Array.of(0, 0, 0, 0, 0, 0, 1, 1) };
    expect([...localLines(apart).possible]).toEqual([1, 1, 1, 1, 1, 1, 0, 0]);
  });
  it('does not reach from one stretch into the next', () => {
    const two = {
      position: Float64Array.from({ length: 40 }, (_, i) => (i % 20) / 3),
      stretch: Int32Array.from({ length: 40 }, (_, i) => (i < 20 ? 0 : 1)),
      used: new Uint8Array(40).fill(1),
    };
    const fit = localLines(two).fit(column(40, (i) => (i < 20 ? 0 : 100)));
    fit.forEach((value, i) => {
      expect(value).toBeCloseTo(i < 20 ? 0 : 100, 8);
    });
  });
});
