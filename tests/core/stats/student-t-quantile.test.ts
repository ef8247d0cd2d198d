import { describe, expect, it } from 'vitest';
import { studentTQuantile } from '../../../src/core/stats/student-t-quantile.ts';

describe('studentTQuantile', () => {
  it('is the example', () => expect(studentTQuantile(0.975, 10)).toBeCloseTo(2.228138851986274, 11));
  it('is nothing in the middle', () => expect(studentTQuantile(0.5, 3)).toBe(0));
  it('refuses certainty', () => expect(() => studentTQuantile(0, 3)).toThrow(RangeError));
  // scipy 1.17.1, stats.t.ppf
  it.each([
    [0.975, 1, 12.706204736174694],
    [0.975, 2.5, 3.5746548420036817],
    [0.025, 30.5, -2.0408694451863205],
    [0.999, 3, 10.214531852407383],
  ])('agrees with scipy at %f with %f degrees', (p, df, want) => {
    expect(studentTQuantile(p, df) / want).toBeCloseTo(1, 10);
  });
});
