import { describe, expect, it } from 'vitest';
import { offPrice } from '../../../src/core/alignment/prices.ts';
import { studentTCdf } from '../../../src/core/stats/student-t-cdf.ts';

describe('offPrice', () => {
  it('costs nothing on time, and as much early as late', () => {
    expect(offPrice(0)).toBe(0);
    expect(offPrice(-1.7)).toBe(offPrice(1.7));
  });

  it("is how far the logarithm of Student's t density with four degrees of freedom falls", () => {
    const step = 1e-4;
    const density = (t: number) => (studentTCdf(t + step, 4) - studentTCdf(t - step, 4)) / (2 * step);
    for (const t of [0.5, 1, 2, 4]) expect(offPrice(t)).toBeCloseTo(Math.log(density(0) / density(t)), 5);
  });
});
