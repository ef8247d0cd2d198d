import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { periodNear, placeAmong, timeOfPlace } from '../../../src/core/alignment/click-places.ts';

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

describe('a click that was played', () => {
  /** Four at 60 a minute, then twice as fast. */
  const played = { times: [0, 1, 2, 3, 3.5, 4, 4.5, 5], period: 0.7, levelDb: 0, played: { delaySe: 0 } };

  it('goes on before and after as it began and ended', () => {
    expect(placeAmong(played, -1.5)).toBe(-1.5);
    expect(placeAmong(played, 6)).toBe(9);
    expect(timeOfPlace(played, -1.5)).toBe(-1.5);
    expect(timeOfPlace(played, 9)).toBe(6);
    const two = { ...played, times: [2, 4] };
    expect([placeAmong(two, 0), timeOfPlace(two, 2)]).toEqual([-1, 6]);
  });

  it('goes by its own times between', () => {
    expect(placeAmong(played, 2.5)).toBe(2.5);
    expect(placeAmong(played, 3.25)).toBe(3.5);
    expect(placeAmong(played, 4)).toBe(5);
    expect(timeOfPlace(played, 2.5)).toBe(2.5);
    expect(timeOfPlace(played, 3.5)).toBe(3.25);
    expect(timeOfPlace(played, 6.5)).toBe(4.75);
  });

  it('has the tempo of the intervals near a time that are alike', () => {
    expect([0.5, 2.9, 3.1, 9].map((time) => periodNear(played, time))).toEqual([1, 1, 0.5, 0.5]);
    // 1, 1.01, 1.02 … s: the middle of up to three on either side.
    let time = 0;
    const slower = { ...played, times: [0, ...Array.from({ length: 10 }, (_, i) => (time += 1 + i / 100))] };
    for (const [at, period] of [
      [-1, 1.015],
      [0.5, 1.015],
      [slower.times[5]! + 0.5, 1.05],
      [slower.times[9]! + 0.5, 1.075],
      [99, 1.075],
    ] as const)
      expect(periodNear(slower, at)).toBeCloseTo(period, 9);
    expect(periodNear({ ...played, times: [0, 1, 2, 2.8] }, 0.5)).toBe(1);
    expect(periodNear({ ...played, times: [0, 2] }, 1)).toBe(2);
  });

  it('has its own period where one time tells none, and a click that was heard has', () => {
    const one = { ...played, times: [3] };
    expect([placeAmong(one, 3.7), timeOfPlace(one, -1), periodNear(one, 1)]).toEqual([
      expect.closeTo(1),
      2.3,
      0.7,
    ]);
    const { played: _, ...heard } = played;
    expect(periodNear(heard, 4)).toBe(0.7);
    expect(placeAmong(heard, 5.7)).toBeCloseTo(8, 9);
  });
});
