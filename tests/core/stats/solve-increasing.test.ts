import { describe, expect, it } from 'vitest';
import { solveIncreasing } from '../../../src/core/stats/solve-increasing.ts';

describe('solveIncreasing', () => {
  it('is the example', () => expect(solveIncreasing((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 13));
  it('finds a crossing beside a flat stretch', () => {
    expect(solveIncreasing((x) => x ** 9 - 1e-9, -1, 10)).toBeCloseTo(0.1, 10);
  });
  it('needs few values of a function', () => {
    const asked = (f: (x: number) => number, from: number, to: number) => {
      let count = 0;
      solveIncreasing(
        (x) => {
          count++;
          return f(x);
        },
        from,
        to,
      );
      return count;
    };
    // Bisection alone would ask 48 times and more.
    expect(asked((x) => x * x - 2, 0, 2)).toBeLessThan(24);
    expect(asked((x) => x ** 9 - 1e-9, -1, 10)).toBeLessThan(200);
  });
  it('ends at once on an end or a step that is the crossing', () => {
    let count = 0;
    const f = (x: number) => {
      count++;
      return x - 1;
    };
    expect(solveIncreasing(f, 0, 2)).toBe(1);
    expect(count).toBe(3);
    expect(solveIncreasing((x) => x, 0, 1)).toBe(0);
    expect(solveIncreasing((x) => x, -1, 0)).toBe(0);
  });
  it('returns the nearer end when there is no crossing', () => {
    expect(solveIncreasing((x) => x + 5, 0, 1)).toBe(0);
    expect(solveIncreasing((x) => x - 5, 0, 1)).toBe(1);
  });
});
