import fc from 'fast-check';
import { expect, it } from 'vitest';
import { cholesky, solveLower } from '../../../src/core/stats/cholesky.ts';

it('is the triangle of a worked example', () => {
  // The example of Wikipedia's article on the Cholesky decomposition (quoted from memory).
  const example = [
    [4, 12, -16],
    [12, 37, -43],
    [-16, -43, 98],
  ];
  expect(cholesky(example)!.map((row) => [...row])).toEqual([
    [2, 0, 0],
    [6, 1, 0],
    [-8, 5, 3],
  ]);
});

it('is null where there is none', () => {
  expect(cholesky([[1, 2], [2, 1]])).toBeNull(); // biome-ignore format: a matrix
  expect(cholesky([[0]])).toBeNull();
});

it('solves what it multiplies', () => {
  const size = 4;
  const entry = fc.double({ min: -3, max: 3, noNaN: true });
  fc.assert(
    fc.property(fc.array(entry, { minLength: 20, maxLength: 20 }), (values) => {
      const lower = Array.from({ length: size }, (_, i) =>
        Float64Array.from({ length: size }, (_, j) => (j < i ? values[4 * i + j]! : j === i ? 1 + i : 0)),
      );
      const x = values.slice(16);
      const b = lower.map((row) => row.reduce((sum, l, j) => sum + l * x[j]!, 0));
      solveLower(lower, b).forEach((found, i) => {
        expect(found).toBeCloseTo(x[i]!, 6);
      });
    }),
  );
});
