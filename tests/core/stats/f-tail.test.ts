import { expect, it } from 'vitest';
import { fTail } from '../../../src/core/stats/f-tail.ts';
import { studentTCdf } from '../../../src/core/stats/student-t-cdf.ts';

// Upper 5 % and 1 % points of F, NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.3 (quoted from memory).
it.each([
  [4.965, 1, 10, 0.05],
  [3.326, 5, 10, 0.05],
  [2.711, 5, 20, 0.05],
  [10.044, 1, 10, 0.01],
])('F > %d with %d and %d degrees of freedom', (f, between, within, chance) => {
  expect(fTail(f, between, within)).toBeCloseTo(chance, 4);
});

it('is the two-sided tail of t for one degree of freedom between', () => {
  expect(fTail(1, 1, 4)).toBeCloseTo(0.3739, 4);
  expect(fTail(2.3 ** 2, 1, 17)).toBeCloseTo(2 * (1 - studentTCdf(2.3, 17)), 10);
  expect(fTail(0, 3, 9)).toBe(1);
});
