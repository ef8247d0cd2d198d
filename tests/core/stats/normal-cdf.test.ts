import { describe, expect, it } from 'vitest';
import { normalCdf } from '../../../src/core/stats/normal-cdf.ts';

describe('normalCdf', () => {
  it('is the example', () => expect(normalCdf(0)).toBe(0.5));
  // scipy 1.17.1, stats.norm.cdf
  it.each([
    [-8, 6.22096057427174e-16],
    [-1.5, 0.06680720126885807],
    [0.3, 0.6179114221889526],
    [2, 0.9772498680518208],
  ])('agrees with scipy at %f', (z, want) => expect(normalCdf(z) / want).toBeCloseTo(1, 12));
});
