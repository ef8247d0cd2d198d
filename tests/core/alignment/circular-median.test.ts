import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circularMedian } from '../../../src/core/alignment/circular-median.ts';
import { median } from '../../../src/core/stats/median.ts';

describe('circularMedian', () => {
  it('goes round the corner', () => {
    expect(circularMedian([0.9, 0, 0.1])).toBeCloseTo(0, 12);
    expect(circularMedian([0.95, 0.97, 0.05])).toBeCloseTo(-0.03, 12);
    expect(circularMedian([0.2, 0.3])).toBeCloseTo(0.25, 12);
  });

  it('is the median of values that lie together, wherever that is', () => {
    const near = fc.array(fc.double({ min: -0.2, max: 0.2, noNaN: true }), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(near, fc.double({ min: -3, max: 3, noNaN: true }), (values, turn) => {
        const found = circularMedian(values.map((value) => value + turn));
        const off = found - median(values) - turn;
        expect(Math.abs(off - Math.round(off))).toBeLessThan(1e-9);
        expect(Math.abs(found)).toBeLessThanOrEqual(1);
      }),
      { seed: 2 },
    );
  });

  it('turns with its values', () => {
    const near = fc.array(fc.double({ min: -0.2, max: 0.2, noNaN: true }), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(near, fc.double({ min: -3, max: 3, noNaN: true }), (values, turn) => {
        const off = circularMedian(values.map((value) => value + turn)) - circularMedian(values) - turn;
        expect(Math.abs(off - Math.round(off))).toBeLessThan(1e-9);
      }),
      { seed: 1 },
    );
  });
});
