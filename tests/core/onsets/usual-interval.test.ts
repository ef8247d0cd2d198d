import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { neighbours, usualInterval } from '../../../src/core/onsets/usual-interval.ts';

const row = (times: readonly number[]) => times.map((time) => ({ time }));

describe('usualInterval', () => {
  it('is the interval of an even row, a gap in it or not', () => {
    expect(usualInterval(row([0, 0.2, 0.4, 0.8, 1]), 2)).toBeCloseTo(0.2, 12);
    expect(usualInterval(row([0, 1, 2, 3, 4, 5, 6]), 0)).toBe(1);
    expect(usualInterval(row([0, 1, 2, 3, 4, 5, 6]), 6)).toBe(1);
  });

  it('goes by the strokes near by where the tempo changes', () => {
    const slowing = row([...Array.from({ length: 30 }, (_, i) => i), ...[31, 33, 35, 37, 39, 41, 43, 45]]);
    expect(usualInterval(slowing, 10)).toBe(1);
    expect(usualInterval(slowing, 37)).toBe(2);
  });

  it('is undefined where there is no interval', () => {
    expect(usualInterval([], 0)).toBeUndefined();
    expect(usualInterval(row([1]), 0)).toBeUndefined();
  });

  it('is the upper median of the intervals that end within six strokes either side', () => {
    const steps = fc.array(fc.integer({ min: 1, max: 1000 }), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(steps, fc.nat(), (intervals, at) => {
        const times = [0];
        for (const interval of intervals) times.push(times.at(-1)! + interval);
        const i = at % times.length;
        const near = intervals.filter((_, k) => k + 1 >= i - neighbours && k + 1 <= i + neighbours);
        const usual = usualInterval(row(times), i);
        expect(near).toContain(usual);
        const half = near.length / 2;
        expect(near.filter((interval) => interval < usual).length).toBeLessThanOrEqual(half);
        expect(near.filter((interval) => interval > usual).length).toBeLessThan(half);
      }),
    );
  });
});
