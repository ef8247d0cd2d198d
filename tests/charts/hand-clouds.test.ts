import { expect, it } from 'vitest';
import { handClouds } from '../../src/charts/hand-clouds.ts';
import { walkingTake } from './walking-take.ts';

it('tells how the left hand lies against the right: 2 ms after it by construction, accents as loud', () => {
  expect(handClouds.text(walkingTake())).toContain(
    "accents of the left hand lie 2.0 ms after the right's against the even place, as loud as they are",
  );
});

it('is left out where one hand plays alone', () => {
  const take = walkingTake();
  const hand = take.strokes.hand.map(() => 'R' as const);
  expect(handClouds.text({ ...take, strokes: { ...take.strokes, hand } })).not.toContain('2.0 ms');
  expect(handClouds.table({ ...take, strokes: { ...take.strokes, hand } }).rows).toEqual([]);
});
