import { describe, expect, it } from 'vitest';
import { standardDeviation } from '../../../src/core/stats/standard-deviation.ts';

describe('standardDeviation', () => {
  it('is the example', () =>
    expect(standardDeviation([2, 4, 4, 4, 5, 5, 7, 9])).toBeCloseTo(Math.sqrt(32 / 7), 14));
  it('of equal values is nothing', () => expect(standardDeviation([0.1, 0.1, 0.1])).toBe(0));
  it('needs two values', () => expect(() => standardDeviation([1])).toThrow(RangeError));
});
