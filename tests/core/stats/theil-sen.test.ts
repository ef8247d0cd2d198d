import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { theilSen } from '../../../src/core/stats/theil-sen.ts';
import { describeOutside } from '../../outside.ts';

describe('theilSen', () => {
  it('is the example', () =>
    expect(theilSen([0, 1, 2], [1, 3, 5])).toMatchObject({ slope: 2, intercept: 1 }));
  // Sen 1968's example as quoted in the tests of scipy: slope 4, 93 % interval 3.71 to 4.38.
  it("reproduces Sen's example", () => {
    const line = theilSen([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78], 0.93);
    expect(line.slope).toBe(4);
    expect(line.intercept).toBe(4);
    expect(line.low).toBeCloseTo(26 / 7, 12);
    expect(line.high).toBe(4.375);
  });
  it('needs two different x', () => expect(() => theilSen([1, 1], [2, 3])).toThrow(RangeError));
});

describeOutside('Theil-Sen against R and scipy', ['r_vectors/r_check_vectors.json'], (folder) => {
  it('agrees on the Nile series', () => {
    const { nile } = JSON.parse(readFileSync(join(folder, 'r_vectors/r_check_vectors.json'), 'utf8'));
    const line = theilSen(
      nile.data.map((_: number, i: number) => i),
      nile.data,
    );
    expect(line.slope).toBeCloseTo(nile.sen, 12);
    // scipy 1.17.1, stats.theilslopes
    expect(line.low).toBeCloseTo(-3.627906976744186, 12);
    expect(line.high).toBeCloseTo(-1.4285714285714286, 12);
  });
});
