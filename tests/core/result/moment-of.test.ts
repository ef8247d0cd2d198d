import { expect, it } from 'vitest';
import { momentOf } from '../../../src/core/result/moment-of.ts';

it('reads a moment as people write it', () => {
  expect(momentOf('1:08.2')).toBeCloseTo(68.2, 9);
  expect(momentOf(' 12,5 ')).toBe(12.5);
  expect(momentOf('0:03')).toBe(3);
  expect(momentOf('')).toBeNull();
  for (const text of ['soon', '1:2:3', '-4', '1:']) expect(momentOf(text)).toBeNaN();
});
