import { describe, expect, it } from 'vitest';
import { fitGrid } from '../../../src/core/click/click-grid.ts';

describe('fitGrid', () => {
  it('is the straight line of least squares', () => {
    // NIST Statistical Reference Datasets, Norris (36 points): certified intercept and slope.
    const y = [
      0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3,
      448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2,
      117.6, 228.9, 668.4, 449.2, 0.2,
    ];
    const x = [
      0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0,
      447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1,
      118.3, 229.2, 669.1, 448.9, 0.5,
    ];
    const { origin, period } = fitGrid(x.map((k, i) => ({ k, time: y[i]!, weight: 1 })));
    expect(origin).toBeCloseTo(-0.262323073774029, 10);
    expect(period).toBeCloseTo(1.00211681802045, 12);
  });

  it('takes a weight of two for the same place seen twice', () => {
    const a = { k: 0, time: 1, weight: 1 };
    const b = { k: 3, time: 2.7, weight: 1 };
    const c = { k: 4, time: 3.1, weight: 1 };
    const twice = fitGrid([a, { ...b, weight: 2 }, c]);
    const repeated = fitGrid([a, b, b, c]);
    expect(twice.origin).toBeCloseTo(repeated.origin, 12);
    expect(twice.period).toBeCloseTo(repeated.period, 12);
  });

  it('counts from any number', () => {
    const at = (k: number) => ({ k, time: 5 + 0.5 * k, weight: 1 + (k % 3) });
    const grid = fitGrid([-7, -3, 0, 1, 12].map((k) => ({ ...at(k), weight: 1 })));
    expect(grid.origin).toBeCloseTo(5, 12);
    expect(grid.period).toBeCloseTo(0.5, 12);
  });
});
