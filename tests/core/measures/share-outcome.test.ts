import { describe, expect, it } from 'vitest';
import { shareOutcome } from '../../../src/core/measures/share-outcome.ts';
import { studentTQuantile } from '../../../src/core/stats/student-t-quantile.ts';
import { wilsonInterval } from '../../../src/core/stats/wilson-interval.ts';

describe('shareOutcome', () => {
  it("is Wilson's interval with Student's t when faults are few", () => {
    const beats = Array.from({ length: 60 }, (_, i) => ({ hits: i === 20 || i === 45 ? 1 : 0, of: 3 }));
    const want = wilsonInterval(2 / 180, 180, studentTQuantile(0.975, 20));
    expect(shareOutcome(beats, 180, [4])).toEqual({
      state: 'measured',
      value: expect.closeTo(200 / 180, 10),
      low: expect.closeTo(100 * want.low, 10),
      high: expect.closeTo(100 * want.high, 10),
      strokes: 180,
      pointsAt: [4],
    });
  });
  it('widens for clusters, at most as by a quarter of the strokes', () => {
    const clustered = Array.from({ length: 60 }, (_, i) => ({ hits: i < 8 ? 3 : 0, of: 3 }));
    const want = wilsonInterval(24 / 180, 180 / 4, studentTQuantile(0.975, 20));
    expect(shareOutcome(clustered, 180, [])).toMatchObject({ high: expect.closeTo(100 * want.high, 10) });
  });
});
