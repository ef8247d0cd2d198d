import { describe, expect, it } from 'vitest';
import { studentTCdf } from '../../../src/core/stats/student-t-cdf.ts';

describe('studentTCdf', () => {
  it('is the example', () => expect(studentTCdf(1, 1)).toBeCloseTo(0.75, 14));
  it('needs degrees of freedom', () => expect(() => studentTCdf(1, 0)).toThrow(RangeError));
  // scipy 1.17.1, stats.t.cdf
  it.each([
    [-1.3, 4, 0.13172579823561206],
    [2.2, 7.5, 0.9694002670469419],
    [-12, 3, 0.0006225079003946681],
  ])('agrees with scipy at %f with %f degrees', (t, df, want) =>
    expect(studentTCdf(t, df)).toBeCloseTo(want, 13),
  );
});
