import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { mannKendall } from '../../../src/core/stats/mann-kendall.ts';
import { normalCdf } from '../../../src/core/stats/normal-cdf.ts';
import { describeOutside } from '../../outside.ts';

describe('mannKendall', () => {
  it('is the example', () => expect(mannKendall([1, 2, 3, 4]).p).toBeCloseTo(2 / 24, 14));
  // S 45 and variance 125 follow from the formula; z without continuity correction would be 3.935480.
  it('of a rising series of ten', () => {
    const trend = mannKendall([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect(trend.s).toBe(45);
    expect(trend.variance).toBe(125);
    expect(trend.p).toBeCloseTo(2 / 3628800, 14);
  });
  // Exact p of R 4.2.2's cor.test(method = 'kendall').
  it('agrees with R without ties', () => {
    const trend = mannKendall([
      500.2, 499.1, 501.7, 498.8, 500.9, 497.5, 498.9, 496.2, 499.6, 495.1, 497.7, 494.9,
    ]);
    expect(trend.s).toBe(-36);
    expect(trend.z).toBeCloseTo(-2.4000391846331, 12);
    expect(trend.p).toBeCloseTo(0.0137707681978515, 13);
  });
  it('finds none in equal values', () => expect(mannKendall([2, 2, 2, 2])).toMatchObject({ z: 0, p: 1 }));
  it('needs three values', () => {
    expect(() => mannKendall([1, 2])).toThrow(RangeError);
    expect(mannKendall([1, 2, 3]).p).toBeCloseTo(2 / 6, 14);
  });
  it('is exact up to 49 values without ties, and no further', () => {
    const rising = (n: number) => Array.from({ length: n }, (_, i) => (i * 7) % 53);
    expect(mannKendall(rising(49)).exact).toBe(true);
    const longer = mannKendall(rising(50));
    expect(longer.exact).toBe(false);
    expect(longer.p).toBeCloseTo(2 * normalCdf(-Math.abs(longer.z)), 15);
    expect(mannKendall(rising(49)).p / longer.p).toBeCloseTo(1, 0);
    expect(mannKendall([1, 1, 2]).exact).toBe(false);
  });
});

describeOutside('Mann-Kendall against R', ['r_vectors/r_check_vectors.json'], (folder) => {
  it('agrees on the Nile series with its ties', () => {
    const { nile } = JSON.parse(readFileSync(join(folder, 'r_vectors/r_check_vectors.json'), 'utf8'));
    const trend = mannKendall(nile.data);
    expect(trend.s).toBe(nile.S);
    expect(trend.variance).toBeCloseTo(nile.varS, 8);
    expect(trend.z).toBeCloseTo(nile.z_cc_R, 10);
    expect(trend.p / nile.p_cc_R).toBeCloseTo(1, 9);
  });
});
