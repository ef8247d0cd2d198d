import { describe, expect, it } from 'vitest';
import { medianStandardError } from '../../../src/core/stats/median-standard-error.ts';

describe('medianStandardError', () => {
  // Binomial tail and normal quantile by scipy 1.17.1.
  it('is the example', () => {
    expect(medianStandardError([3, 1, 5, 2, 4])).toBeCloseTo(4 / (2 * 1.8627318674216515), 10);
  });
  it('takes the fourth and the eleventh of fourteen values', () => {
    const values = [1.2, 3.4, 2.2, 5.9, 4.4, 0.3, 9.1, 7.7, 6.5, 2.8, 3.9, 4.1, 8.8, 1.9];
    expect(medianStandardError(values)).toBeCloseTo((6.5 - 2.2) / (2 * 1.90045796046655), 10);
  });
  it('needs four values', () => expect(() => medianStandardError([1, 2, 3])).toThrow(RangeError));
});
