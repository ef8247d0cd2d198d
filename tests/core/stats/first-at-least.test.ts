import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstAtLeast } from '../../../src/core/stats/first-at-least.ts';

describe('firstAtLeast', () => {
  it('gives the example of its comment', () => {
    expect(firstAtLeast([1, 2, 2, 3], 2)).toBe(1);
  });

  it('counts what lies below, wherever that is', () => {
    const numbers = fc.integer({ min: -5, max: 5 });
    fc.assert(
      fc.property(fc.array(numbers), numbers, (values, least) => {
        const ascending = values.toSorted((a, b) => a - b);
        const below = values.filter((value) => value < least).length;
        expect(firstAtLeast(ascending, least)).toBe(below);
        const named = ascending.map((at) => ({ at }));
        expect(firstAtLeast(named, least, ({ at }) => at)).toBe(below);
      }),
    );
  });
});
