import fc from 'fast-check';
import { expect, it } from 'vitest';
import { packRun, unpackRun } from '../../src/report/number-run.ts';

it('packs what stays or counts on into few numbers', () => {
  expect(packRun([0, 1, 2, 3, 3])).toEqual([0, 1, 1, 3, 0, 1]);
  expect(packRun([])).toEqual([]);
  expect(packRun(Array.from({ length: 1000 }, (_, i) => i))).toHaveLength(4);
});

it('gives any column of whole numbers back', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -5, max: 5000 })), (column) => {
      expect(unpackRun(packRun(column))).toEqual(column);
    }),
  );
});
