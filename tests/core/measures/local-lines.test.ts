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
  it('parts the variance left by whose values it comes from', () => {
    const lines = localLines(course(60, 3, (i) => i % 11 !== 5));
    const group = Array.from({ length: 60 }, (_, i) => i % 3);
    const shares = lines.residualShares(group, 3);
    lines.residualVariance.forEach((variance, i) => {
      const sum = shares.subarray(3 * i, 3 * i + 3).reduce((a, b) => a + b, 0);
      expect(sum).toBeCloseTo(variance, 10);
    });
    // One value of a group alone: the square of what of it is left is its own share.
    const alone = lines.fit(column(60, (i) => (i === 30 ? 1 : 0)));
    const single = lines.residualShares(
      group.map((_, i) => (i === 30 ? 0 : -1)),
      1,
    );
    for (const i of [28, 30, 33]) expect(single[i]).toBeCloseTo(((i === 30 ? 1 : 0) - alone[i]!) ** 2, 10);
  });
  it('says where there is too little to draw a line through', () => {
    expect([...localLines(course(3, 3)).possible]).toEqual([0, 0, 0]);
    const apart = { ...course(8, 3), stretch: Int32Array.of(0, 0, 0, 0, 0, 0, 1, 1) };
    expect([...localLines(apart).possible]).toEqual([1, 1, 1, 1, 1, 1, 0, 0]);
  });
  it('leaves what is not used out, and gives the variance there as well', () => {
    const at = 20;
    const lines = localLines(course(60, 3, (i) => i !== at && i % 9 !== 4));
    const weights = Array.from({ length: 60 }, (_, j) => lines.fit(column(60, (i) => (i === j ? 1 : 0))));
    expect(weights[at]!.every((weight) => weight === 0)).toBe(true);
    // Of independent values of variance 1: that of the value itself and of the fit, which holds some of it or none.
    for (const i of [0, 5, at, 22, 40, 59]) {
      const used = i !== at && i % 9 !== 4 ? 1 : 0;
      const own = weights.reduce((sum, fit, j) => sum + ((i === j ? used : 0) - fit[i]!) ** 2, 1 - used);
      expect(lines.residualVariance[i], `place ${i}`).toBeCloseTo(own, 10);
    }
  });
  it('fits a stretch shorter than the window whole, each stroke alike', () => {
    // The line through (0, 1, 2, 3 …) by the textbook: Σ(x − x̄)(y − ȳ) / Σ(x − x̄)².
    for (const n of [4, 7, 12]) {
      const y = column(n, (i) => (i * i) % 5);
      const mean = (n - 1) / 2;
      const level = y.reduce((a, b) => a + b, 0) / n;
      const spread = y.reduce((sum, _, i) => sum + (i - mean) ** 2, 0);
      const slope = y.reduce((sum, v, i) => sum + (i - mean) * (v - level), 0) / spread;
      const lines = localLines(course(n, 3));
      lines.fit(y).forEach((value, i) => {
        expect(value).toBeCloseTo(level + slope * (i - mean), 10);
      });
      expect(lines.slope(y)[0]).toBeCloseTo(3 * slope, 10);
      const later = localLines({ ...course(n, 3), position: column(n, (i) => 7 + i / 3) });
      later.fit(y).forEach((value, i) => {
        expect(value).toBeCloseTo(lines.fit(y)[i]!, 10);
      });
    }
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
