import { describe, expect, it } from 'vitest';
import { median } from '../../../src/core/stats/median.ts';

describe('median', () => {
  it('is the example', () => expect(median([5, 1, 4])).toBe(4));
  it('of an even number lies in the middle', () => expect(median([1, 2, 10, 4])).toBe(3));
  // Chemical data of Venables & Ripley as quoted in the tests of statsmodels.
  it('of the chemical data is 3.385', () => expect(median(chemical)).toBeCloseTo(3.385, 12));
});

const chemical = [
  2.2, 2.2, 2.4, 2.4, 2.5, 2.7, 2.8, 2.9, 3.03, 3.03, 3.1, 3.37, 3.4, 3.4, 3.4, 3.5, 3.6, 3.7, 3.7, 3.7, 3.7,
  3.77, 5.28, 28.95,
];
