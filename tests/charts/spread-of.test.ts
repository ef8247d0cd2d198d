import { describe, expect, it } from 'vitest';
import { spreadOf } from '../../src/charts/spread-of.ts';

describe('spreadOf', () => {
  it('gives the quartiles of definition 7', () => {
    // R: quantile(c(4, 1, 3, 2), c(.25, .5, .75)) gives 1.75 2.50 3.25 (type 7 is R's default; from memory).
    expect(spreadOf([4, 1, 3, 2])).toEqual({
      count: 4,
      lowest: 1,
      lowerQuarter: 1.75,
      middle: 2.5,
      upperQuarter: 3.25,
      highest: 4,
    });
  });

  it('says null for nothing', () => {
    expect(spreadOf([])).toBeNull();
  });
});
