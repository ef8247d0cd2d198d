import { describe, expect, it } from 'vitest';
import { outliers } from '../../../src/core/stats/outliers.ts';

/** Rosner's data as the NIST/SEMATECH e-Handbook 1.3.5.17.3 prints them; three outliers at α = 0.05. */
const rosner = [
  -0.25, 0.68, 0.94, 1.15, 1.2, 1.26, 1.26, 1.34, 1.38, 1.43, 1.49, 1.49, 1.55, 1.56, 1.58, 1.65, 1.69, 1.7,
  1.76, 1.77, 1.81, 1.91, 1.94, 1.96, 1.99, 2.06, 2.09, 2.1, 2.14, 2.15, 2.23, 2.24, 2.26, 2.35, 2.37, 2.4,
  2.47, 2.54, 2.62, 2.64, 2.9, 2.92, 2.92, 2.93, 3.21, 3.26, 3.3, 3.59, 3.68, 4.3, 4.64, 5.34, 5.42, 6.01,
];

function marked(values: readonly number[], group: readonly number[], options = {}): number[] {
  const marks = outliers(values, group, options);
  return [...marks.keys()].filter((i) => marks[i] === 1);
}
const one = (values: readonly number[]) => values.map(() => 0);

describe('outliers', () => {
  it('are the three of the handbook, of which the first two hide each other', () => {
    expect(marked(rosner, one(rosner), { alpha: 0.05, most: 10 })).toEqual([51, 52, 53]);
  });

  it('gives the example', () => {
    const values = [1, 2, 3, 2, 1, 2, 3, 2, 1, 90];
    expect(marked(values, one(values))).toEqual([9]);
  });

  it('are far from their own group, not from all', () => {
    const low = [0.1, -0.2, 0.3, 0, -0.1, 0.2, -0.3, 0.1, 0.2, -0.2];
    const values = [...low, ...low.map((x) => x + 10), 10.1];
    const group = values.map((_, i) => (i < 10 ? 0 : 1));
    expect(marked(values, group)).toEqual([]);
    expect(marked([...values.slice(0, -1), 0.1], group)).toEqual([20]);
  });

  it('are none among equal values, one apart, or too few', () => {
    expect(marked([2, 2, 2, 2, 2, 2, 2, 2, 2, 2], new Array(10).fill(0))).toEqual([]);
    expect(marked([1, 50, 3], [0, 0, 0], { most: 1 })).toEqual([]);
    expect(marked([], [])).toEqual([]);
  });
});
