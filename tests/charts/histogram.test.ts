import { describe, expect, it } from 'vitest';
import { binWidth, histogram } from '../../src/charts/histogram.ts';

describe('histogram', () => {
  it('counts into bins centred on whole multiples, strays into the outermost', () => {
    expect(histogram([0, 1, -9, 50], 4, 8)).toEqual({ width: 4, first: -8, counts: [1, 0, 2, 0, 1] });
  });

  it('loses no value', () => {
    const values = Array.from({ length: 500 }, (_, i) => 40 * Math.sin(i));
    expect(histogram(values, 5, 20).counts.reduce((a, b) => a + b)).toBe(500);
  });
});

describe('binWidth', () => {
  it('is the round width nearest to 2·IQR/∛n', () => {
    expect(binWidth(20, 1000)).toBe(4); // 2·20/10
    expect(binWidth(20, 8)).toBe(20); // 2·20/2
    expect(binWidth(0, 10)).toBe(1);
  });
});
