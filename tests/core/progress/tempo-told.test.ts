import { expect, it } from 'vitest';
import { tempoTold } from '../../../src/core/progress/tempo-told.ts';

it('a playing counts at the tempo asked for, within 3 %, else at the one played', () => {
  expect(tempoTold(80, 82.4)).toBe(80);
  expect(tempoTold(80, 77.7)).toBe(80);
  expect(tempoTold(80, 82.5)).toBe(82.5);
  expect(tempoTold(80, 92.4)).toBe(92.4);
  expect([tempoTold(80, null), tempoTold(null, 92.4), tempoTold(null, null)]).toEqual([80, 92.4, null]);
});
