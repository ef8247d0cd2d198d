import { describe, expect, it } from 'vitest';
import { summaryOf, tOfDifference } from '../../../src/core/stats/mean-difference.ts';

describe('tOfDifference', () => {
  it('is the example: with one degree of freedom t is Cauchy distributed', () =>
    expect(tOfDifference(2, 1, 1).p).toBeCloseTo(2 * (0.5 - Math.atan(2) / Math.PI), 13));
  it('knows what to do without scatter', () => {
    expect(tOfDifference(0, 0, 3)).toMatchObject({ t: 0, p: 1 });
    expect(tOfDifference(-0.1, 0, 3)).toMatchObject({ t: -Infinity, p: 0 });
  });
});

describe('summaryOf', () => {
  it('sums a sample up', () =>
    expect(summaryOf([2, 4, 4, 4, 5, 5, 7, 9])).toEqual({ n: 8, mean: 5, sd: Math.sqrt(32 / 7) }));
  it('needs two values', () => expect(() => summaryOf([1])).toThrow(RangeError));
});
