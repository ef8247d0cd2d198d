import { describe, expect, it } from 'vitest';
import { chiSquareQuantile } from '../../../src/core/stats/chi-square-quantile.ts';

describe('chiSquareQuantile', () => {
  it('is the example', () => expect(chiSquareQuantile(0.95, 1)).toBeCloseTo(3.841458820694124, 10));
  it('refuses certainty and no freedom', () => {
    expect(() => chiSquareQuantile(1, 3)).toThrow(RangeError);
    expect(() => chiSquareQuantile(0.5, 0)).toThrow(RangeError);
  });
  // scipy 1.17.1, stats.chi2.ppf
  it.each([
    [0.975, 1, 5.023886187314888],
    [0.025, 1, 0.0009820691171752555],
    [0.025, 3.3, 0.28675968143695185],
    [0.975, 45.7, 66.25485764471593],
    [0.025, 400, 346.48176536291464],
    [0.5, 10, 9.34181776559197],
  ])('agrees with scipy at %f with %f degrees', (p, df, want) => {
    expect(chiSquareQuantile(p, df) / want).toBeCloseTo(1, 10);
  });
});
