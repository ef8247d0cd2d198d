import { describe, expect, it } from 'vitest';
import { fitClock, timeOn } from '../../../src/core/click/click-clock.ts';

describe('fitClock', () => {
  it('finds delay and rate', () => {
    const readings = [0, 10, 20, 60].map((put) => ({ put, time: 0.1 + 1.00003 * put }));
    const clock = fitClock(readings);
    expect(clock.delay).toBeCloseTo(0.1, 6);
    expect(clock.rate).toBeCloseTo(1.00003, 8);
    expect(timeOn(clock, 30)).toBeCloseTo(0.1 + 30 * 1.00003, 6);
  });

  it('takes clocks for alike where readings lie close together', () => {
    // A tenth of a millisecond in half a second would be 200 parts in a million.
    const { rate } = fitClock([
      { put: 4, time: 4.1 },
      { put: 4.5, time: 4.6001 },
    ]);
    expect(Math.abs(rate - 1)).toBeLessThan(160e-6);
    expect(fitClock([{ put: 4, time: 4.1 }])).toEqual({ delay: expect.closeTo(0.1, 12), rate: 1 });
  });
});
