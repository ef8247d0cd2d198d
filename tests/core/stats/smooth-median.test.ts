import { describe, expect, it } from 'vitest';
import { smoothMedian } from '../../../src/core/stats/smooth-median.ts';

const levels = [-10.1, -9.5, -11.2, -8.8, -10.7, -9.9, -10.3, -13.5, -10, -9.2, -9.6, -10.9];

describe('smoothMedian', () => {
  // scipy.stats.mstats.hdmedian, scipy 1.17.1.
  it.each([
    [[1, 2, 3, 4, 5], 3],
    [[1, 10], 5.5],
    [[1.2, 3.4, 2.2, 9.1, -4, 0.3], 1.792014038649749],
    [levels, -10.091865206881796],
  ])('of %j is what an independent library gives', (values, expected) => {
    expect(smoothMedian(values).value).toBeCloseTo(expected, 10);
  });

  it('has pulls that are the jackknife, each value left out in turn', () => {
    const { pulls } = smoothMedian(levels);
    const estimates = levels.map((_, k) => smoothMedian(levels.filter((_, i) => i !== k)).value);
    const mean = estimates.reduce((sum, x) => sum + x, 0) / estimates.length;
    estimates.forEach((estimate, k) => {
      expect(pulls[k]).toBeCloseTo(Math.sqrt(11 / 12) * (mean - estimate), 10);
    });
    expect(pulls[3]).toBeGreaterThan(0);
    expect(pulls[7]).toBeLessThan(0);
  });

  it('moves by less than half of what one value in the middle moves', () => {
    const moved = levels.map((level) => (level === -10.1 ? -10.3 : level));
    expect(smoothMedian(moved).value).toBeGreaterThan(smoothMedian(levels).value - 0.1);
  });

  it('of a thousand values has the weights of all add up', () => {
    const many = Array.from({ length: 1001 }, (_, i) => 7 + (i - 500) / 100);
    expect(smoothMedian(many).value).toBeCloseTo(7, 9);
    expect(smoothMedian(many.map(() => 3)).pulls.every((pull) => Math.abs(pull) < 1e-9)).toBe(true);
  });

  it('needs two values', () => expect(() => smoothMedian([1])).toThrow(RangeError));
});
