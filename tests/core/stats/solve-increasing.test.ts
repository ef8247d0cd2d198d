import { describe, expect, it } from 'vitest';
import { solveIncreasing } from '../../../src/core/stats/solve-increasing.ts';

describe('solveIncreasing', () => {
  it('is the example', () => expect(solveIncreasing((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 13));
  it('finds a crossing beside a flat stretch', () => {
    expect(solveIncreasing((x) => x ** 9 - 1e-9, -1, 10)).toBeCloseTo(0.1, 10);
  });
  it('returns the nearer end when there is no crossing', () => {
    expect(solveIncreasing((x) => x + 5, 0, 1)).toBe(0);
    expect(solveIncreasing((x) => x - 5, 0, 1)).toBe(1);
  });
});
