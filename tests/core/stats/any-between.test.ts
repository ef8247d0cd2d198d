import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyBetween } from '../../../src/core/stats/any-between.ts';

describe('anyBetween', () => {
  it('leaves both ends out', () => {
    expect(anyBetween([1, 2, 3], 1.5, 2.5)).toBe(true);
    expect(anyBetween([1, 2, 3], 2, 3)).toBe(false);
    expect(anyBetween([1, 2, 3], 3, 9)).toBe(false);
    expect(anyBetween([1, 2, 3], -9, 1)).toBe(false);
    expect(anyBetween([], 0, 1)).toBe(false);
    expect(anyBetween([1], 2, 0)).toBe(false);
  });

  it('knows a range open to one side', () => {
    expect(anyBetween([1], Number.NEGATIVE_INFINITY, 2)).toBe(true);
    expect(anyBetween([1], 0, Number.POSITIVE_INFINITY)).toBe(true);
  });

  it('says what looking at each of them says, equal ones included', () => {
    const places = fc.integer({ min: 0, max: 12 });
    fc.assert(
      fc.property(fc.array(places, { maxLength: 20 }), places, places, (some, from, to) => {
        const times = some.toSorted((a, b) => a - b);
        expect(anyBetween(times, from, to)).toBe(times.some((time) => time > from && time < to));
      }),
    );
  });
});
