import { expect, it } from 'vitest';
import { evenSample } from '../../../src/core/stats/even-sample.ts';

it('takes values spread evenly over all, in their order', () => {
  expect(evenSample([1, 2, 3, 4, 5, 6], 3)).toEqual([1, 3, 5]);
  expect(evenSample([1, 2, 3, 4, 5], 3)).toEqual([1, 2, 4]);
  expect(evenSample([1, 2, 3, 4, 5], 4)).toEqual([1, 2, 3, 4]);
});

it('takes all where there are no more, and none of none', () => {
  expect(evenSample([1, 2, 3], 3)).toEqual([1, 2, 3]);
  expect(evenSample([1, 2, 3], 9)).toEqual([1, 2, 3]);
  expect(evenSample([], 3)).toEqual([]);
});
