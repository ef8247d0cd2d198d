import { expect, it } from 'vitest';
import { strokeAfterKey } from '../../../src/report/client/stroke-keys.ts';

it('walks through the strokes of a picture and lets go', () => {
  const strokes = [7, 2, 5, 2];
  const after = (key: string, chosen: number | null) => strokeAfterKey(key, strokes, chosen);
  expect([after('ArrowRight', null), after('ArrowRight', 2), after('ArrowRight', 4)]).toEqual([2, 5, 5]);
  expect([after('ArrowRight', 7), after('ArrowLeft', 2), after('ArrowLeft', null)]).toEqual([7, 2, 7]);
  expect([after('ArrowLeft', 7), after('Home', 5), after('End', 5)]).toEqual([5, 2, 7]);
  expect(after('Escape', 5)).toBeNull();
  expect([after('a', 5), strokeAfterKey('Home', [], null)]).toEqual([undefined, undefined]);
});
