import { describe, expect, it } from 'vitest';
import { logGamma } from '../../../src/core/stats/log-gamma.ts';

describe('logGamma', () => {
  it('is the example', () => expect(logGamma(5)).toBeCloseTo(Math.log(24), 13));
  it('of one half is ln √π', () => expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.PI) / 2, 13));
  it('refuses what has no gamma here', () => expect(() => logGamma(0)).toThrow(RangeError));
  // scipy 1.17.1, special.gammaln
  it.each([
    [0.1, 2.252712651734206],
    [3.7, 1.428072326665388],
    [100, 359.1342053695754],
  ])('agrees with scipy at %f', (x, want) => expect(logGamma(x) / want).toBeCloseTo(1, 13));
});
