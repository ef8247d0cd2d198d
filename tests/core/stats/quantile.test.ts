import { describe, expect, it } from 'vitest';
import { quantile } from '../../../src/core/stats/quantile.ts';

// A trial of Bååth & Madison 2012; quantiles by R 4.2.2's quantile(type = 7).
const series = [
  222, -271, 160, 54, 17, -19, -35, -44, -56, -41, -63, -71, -114, -113, -76, -106, -92, -112, -94, -79, -65,
  -97, -104, -78, -58, -34, -72, -59, -69, -69,
];

describe('quantile', () => {
  it('is the example', () => expect(quantile([4, 1, 3, 2], 0.25)).toBe(1.75));
  it('reaches the ends', () => {
    expect(quantile([4, 1, 3], 0)).toBe(1);
    expect(quantile([4, 1, 3], 1)).toBe(4);
  });
  it('refuses nothing and impossible shares', () => {
    expect(() => quantile([], 0.5)).toThrow(RangeError);
    expect(() => quantile([1], 1.1)).toThrow(RangeError);
    expect(() => quantile([1, 2], -0.1)).toThrow(RangeError);
  });
  it('does not reorder its input', () => {
    const values = [3, 1, 2];
    quantile(values, 0.5);
    expect(values).toEqual([3, 1, 2]);
  });
  it('agrees with R', () => {
    const copy = series.filter((_, i) => i !== series.length - 1);
    expect(quantile(copy, 0.25)).toBeCloseTo(-94, 12);
  });
});
