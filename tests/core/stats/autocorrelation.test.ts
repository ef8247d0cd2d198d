import { describe, expect, it } from 'vitest';
import { autocorrelation } from '../../../src/core/stats/autocorrelation.ts';

describe('autocorrelation', () => {
  it('is the example', () => expect(autocorrelation([1, -1, 1, -1], 1)).toBe(-0.75));
  it('of a constant series is none', () => expect(autocorrelation([3, 3, 3], 1)).toBe(0));
  it('needs a series longer than the lag', () =>
    expect(() => autocorrelation([1, 2], 2)).toThrow(RangeError));
  // Lags 1-3 of R 4.2.2's acf() on a trial of Bååth & Madison 2012 (subject 26, 600 ms).
  it('agrees with R', () => {
    const asynchronies = [
      -41, -43, -63, -43, -44, -54, -49, -55, -64, -55, -57, -37, -62, -58, -61, -59, -43, -45, -42, -41, -43,
      -67, -63, -63, -76, -40, -58, -70, -69,
    ];
    expect(autocorrelation(asynchronies, 1)).toBeCloseTo(0.188507349296205, 14);
    expect(autocorrelation(asynchronies, 2)).toBeCloseTo(0.0192224502723569, 14);
    expect(autocorrelation(asynchronies, 3)).toBeCloseTo(0.0323600032426003, 14);
  });
});
