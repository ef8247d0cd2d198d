import { expect, it } from 'vitest';
import { readRoute } from '../../../src/page/shell/route.ts';

it('readRoute reads the part of the address behind #', () => {
  expect(readRoute('#/takes/17?shared')).toEqual({ name: 'takes', parts: ['17'], asks: 'shared' });
  expect(readRoute('')).toEqual({ name: '', parts: [], asks: '' });
  expect(readRoute('#/')).toEqual({ name: '', parts: [], asks: '' });
  expect(readRoute('#/takes/a%20b/%')).toEqual({ name: 'takes', parts: ['a b', '%'], asks: '' });
});
