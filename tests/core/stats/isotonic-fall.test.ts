import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isotonicFall, type Weighted } from '../../../src/core/stats/isotonic-fall.ts';

const points = fc.array(
  fc.record({ value: fc.integer({ min: -50, max: 50 }), weight: fc.integer({ min: 1, max: 9 }) }),
  { minLength: 1, maxLength: 12 },
);

/** The fit at i by its other definition: the least over starts of the largest mean (max-min formula, Barlow et al. 1972). */
function byFormula(values: readonly Weighted[], i: number): number {
  const mean = (from: number, to: number) => {
    const own = values.slice(from, to + 1);
    const weight = own.reduce((sum, one) => sum + one.weight, 0);
    return own.reduce((sum, one) => sum + one.weight * one.value, 0) / weight;
  };
  const last = [...values.keys()].filter((to) => to >= i);
  const starts = [...values.keys()].filter((from) => from <= i);
  return Math.min(...starts.map((from) => Math.max(...last.map((to) => mean(from, to)))));
}

describe('isotonicFall', () => {
  // The example of R's `isoreg` (stats), turned round: 1, 0, 4, 3, 3, 5, 4, 2, 0 gives 0.5, 0.5, 3, 3, 3, 3, 3, 3, 3.
  it('gives what R gives', () => {
    const values = [1, 0, 4, 3, 3, 5, 4, 2, 0].map((value) => ({ value: -value, weight: 1 }));
    expect(isotonicFall(values)).toEqual([-0.5, -0.5, -3, -3, -3, -3, -3, -3, -3]);
  });

  it('is what the max-min formula says, with weights', () => {
    fc.assert(
      fc.property(points, (values) => {
        isotonicFall(values).forEach((fit, i) => {
          expect(fit).toBeCloseTo(byFormula(values, i), 9);
        });
      }),
    );
  });

  it('falls, keeps the weighted mean, and leaves falling values alone', () => {
    fc.assert(
      fc.property(points, (values) => {
        const fit = isotonicFall(values);
        fit.slice(1).forEach((value, i) => {
          expect(value).toBeLessThanOrEqual(fit[i]! + 1e-9);
        });
        const sum = (of: readonly number[]) => of.reduce((s, v, i) => s + v * values[i]!.weight, 0);
        expect(sum(fit)).toBeCloseTo(sum(values.map(({ value }) => value)), 6);
        const falling = values.toSorted((a, b) => b.value - a.value);
        expect(isotonicFall(falling)).toEqual(falling.map(({ value }) => expect.closeTo(value, 9)));
      }),
    );
  });
});
