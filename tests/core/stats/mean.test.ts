import { describe, expect, it } from 'vitest';
import { mean } from '../../../src/core/stats/mean.ts';

describe('mean', () => {
  it('is the example', () => expect(mean([2, 4, 9])).toBe(5));
  it('keeps the digits that a plain sum loses', () => {
    expect(mean(new Float64Array(1000).fill(0.1))).toBe(0.1);
  });
  it('refuses to speak of nothing', () => expect(() => mean([])).toThrow(RangeError));
});
