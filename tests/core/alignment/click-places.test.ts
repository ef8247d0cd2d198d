import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeAmong, timeOfPlace } from '../../../src/core/alignment/click-places.ts';

const click = { times: [1, 1.5, 2.01, 2.5], period: 0.5, levelDb: -20 };

describe('places among clicks', () => {
  it('count from the first click', () => {
    expect(placeAmong(click, 1)).toBe(0);
    expect(placeAmong(click, 1.25)).toBe(0.5);
    expect(placeAmong(click, 2.5)).toBe(3);
  });

  it('go on evenly outside the clicks', () => {
    expect(placeAmong(click, 0)).toBe(-2);
    expect(placeAmong(click, 3.5)).toBe(5);
    expect(timeOfPlace(click, -1)).toBe(0.5);
  });

  it('lead back to the time', () => {
    fc.assert(
      fc.property(fc.double({ min: -5, max: 9, noNaN: true }), (time) => {
        expect(timeOfPlace(click, placeAmong(click, time))).toBeCloseTo(time, 9);
      }),
      { seed: 1 },
    );
  });
});
