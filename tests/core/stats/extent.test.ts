import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { extent } from '../../../src/core/stats/extent.ts';

describe('extent', () => {
  it('gives the example of its comment', () => {
    expect(extent([3, -1, 2])).toEqual({ least: -1, most: 3 });
  });

  it('is Math.min and Math.max, of nothing as well', () => {
    fc.assert(
      fc.property(fc.array(fc.double()), (values) => {
        expect(extent(values)).toEqual({ least: Math.min(...values), most: Math.max(...values) });
      }),
    );
  });

  it('takes a million numbers', () => {
    expect(extent(Array.from({ length: 1e6 }, (_, i) => i))).toEqual({ least: 0, most: 1e6 - 1 });
  });
});
