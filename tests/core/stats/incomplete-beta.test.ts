import { describe, expect, it } from 'vitest';
import { incompleteBeta } from '../../../src/core/stats/incomplete-beta.ts';

describe('incompleteBeta', () => {
  it('is the example', () => expect(incompleteBeta(1, 1, 0.3)).toBeCloseTo(0.3, 14));
  it('reaches the ends', () => expect([incompleteBeta(2, 3, 0), incompleteBeta(2, 3, 1)]).toEqual([0, 1]));
  // scipy 1.17.1, special.betainc
  it.each([
    [2, 3, 0.4, 0.5248],
    [0.5, 20, 0.02, 0.6283343133368391],
    [50, 0.5, 0.99, 0.3173043978741973],
  ])('agrees with scipy at %f, %f, %f', (a, b, x, want) =>
    expect(incompleteBeta(a, b, x)).toBeCloseTo(want, 12),
  );
});
