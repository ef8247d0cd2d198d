import { describe, expect, it } from 'vitest';
import { separationInterval } from '../../../src/core/stats/separation-interval.ts';

const z = 1.9599639845400545;

describe('separationInterval', () => {
  // The same equation solved by scipy 1.17.1's brentq.
  it.each([
    [0.9, 16, 32, 0.753309180821983, 0.9608730474914176],
    [1, 10, 10, 0.8002136128811062, 1],
    [0.893, 58, 51, 0.8114766032282001, 0.9398832342958491],
    [0.5, 8, 8, 0.2525268198551467, 0.7474731801448533],
  ])('of %f from %i and %i', (theta, m, n, low, high) => {
    const interval = separationInterval(theta, m, n, z);
    expect(interval.low).toBeCloseTo(low, 10);
    expect(interval.high).toBeCloseTo(high, 10);
  });
  it('refuses an empty side', () => expect(() => separationInterval(1, 0, 3, z)).toThrow(RangeError));
});
