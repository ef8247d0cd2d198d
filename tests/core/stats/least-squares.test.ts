import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../../src/core/stats/least-squares.ts';

const ones = (n: number) => new Float64Array(n).fill(1);
const column = (...values: number[]) => Float64Array.from(values);

describe('leastSquares', () => {
  it('is the example', () => {
    const fit = leastSquares({ columns: [ones(3), column(0, 1, 2)] }, column(1, 3, 5));
    expect(fit.coefficients[0]).toBeCloseTo(1, 14);
    expect(fit.coefficients[1]).toBeCloseTo(2, 14);
  });
  // numpy 2, linalg.lstsq and inv(A'A)
  it('agrees with numpy on three columns', () => {
    const columns = [ones(6), column(0, 1, 1, 2, 5, 3), column(1, 0, 1, 3, -1, 2)];
    const fit = leastSquares({ columns }, column(1, 2, 4, 3, 8, 5));
    [1.5, 1.26388889, -0.19444444].forEach((want, k) => {
      expect(fit.coefficients[k]).toBeCloseTo(want, 7);
    });
    expect(fit.residuals.reduce((sum, r) => sum + r * r, 0)).toBeCloseTo(2.93055556, 7);
    expect(fit.inverse[0]![1]).toBeCloseTo(-1 / 6, 12);
    expect(fit.inverse[2]![2]).toBeCloseTo(1 / 9, 12);
  });
  it('leaves out a column that earlier ones express, and says how', () => {
    const a = column(1, 0, 1, 0, 1);
    const b = column(0, 1, 0, 1, 0);
    const fit = leastSquares({ columns: [a, b, ones(5), column(1, 2, 3, 4, 9)] }, column(3, 2, 3, 2, 3));
    expect(fit.kept).toEqual([0, 1, 3]);
    expect(fit.coefficients[2]).toBe(0);
    expect([...fit.expressed[2]!].map((v) => Number(v.toFixed(10)) + 0)).toEqual([1, 1, 0]);
    expect(fit.coefficients[0]).toBeCloseTo(3, 12);
  });
  it('leaves out a column that rests on too few values', () => {
    const lone = column(0, 0, 0, 0, 0, 0, 0, 1);
    expect(leastSquares({ columns: [ones(8), lone], minEffective: 3 }, ones(8)).kept).toEqual([0]);
    expect(leastSquares({ columns: [ones(8), lone] }, ones(8)).kept).toEqual([0, 1]);
  });
});
