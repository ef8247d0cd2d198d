import { describe, expect, it } from 'vitest';
import { incompleteGamma } from '../../../src/core/stats/incomplete-gamma.ts';

describe('incompleteGamma', () => {
  it('is the example', () => expect(incompleteGamma(1, 2).upper).toBeCloseTo(Math.exp(-2), 14));
  it('starts at nothing', () => expect(incompleteGamma(3, 0)).toEqual({ lower: 0, upper: 1 }));
  // scipy 1.17.1, special.gammainc and gammaincc
  it.each([
    [2, 3, 0.8008517265285442],
    [0.5, 0.1, 0.34527915398142317],
    [30, 20, 0.021818217525557418],
  ])('lower part at %f, %f', (a, x, want) => expect(incompleteGamma(a, x).lower / want).toBeCloseTo(1, 12));
  it.each([
    [2, 30, 2.9008631203404573e-12],
    [0.5, 5, 0.001565402258002549],
  ])('upper part at %f, %f', (a, x, want) => expect(incompleteGamma(a, x).upper / want).toBeCloseTo(1, 12));
});
