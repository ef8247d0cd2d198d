import { describe, expect, it } from 'vitest';
import { mad, madToSd } from '../../../src/core/stats/mad.ts';
import { normalQuantile } from '../../../src/core/stats/normal-quantile.ts';

// Chemical data of Venables & Ripley, and its MAD, as quoted in the tests of statsmodels.
const chemical = [
  2.2, 2.2, 2.4, 2.4, 2.5, 2.7, 2.8, 2.9, 3.03, 3.03, 3.1, 3.37, 3.4, 3.4, 3.4, 3.5, 3.6, 3.7, 3.7, 3.7, 3.7,
  3.77, 5.28, 28.95,
];

describe('mad', () => {
  it('is the example', () => expect(mad([1, 2, 3, 4, 100])).toBe(1));
  it('of the chemical data is .52632 when rescaled', () =>
    expect(mad(chemical) * madToSd).toBeCloseTo(0.52632, 5));
  it('is rescaled by the inverse upper quartile', () =>
    expect(madToSd * normalQuantile(0.75)).toBeCloseTo(1, 14));
});
