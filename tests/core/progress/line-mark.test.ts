import { expect, it } from 'vitest';
import { lineDistance, lineMark } from '../../../src/core/progress/line-mark.ts';

it('scores a figure of a line as the steady rubric does: 85 at its secure point, 60 at nearly', () => {
  expect(lineMark('timing-spread-share', { value: 5, low: 4, high: 6.5 }).value).toBeCloseTo(85, 9);
  expect(lineMark('hand-offset-share', { value: -5, low: -6, high: -4 }).value).toBeCloseTo(60, 9);
});

it('gives the distance from perfect with its interval, whichever way it lies', () => {
  expect(lineDistance('hand-offset-share', { value: -5, low: -6, high: -4 })).toMatchObject({
    value: 5,
    low: 4,
    high: 6,
  });
  expect(lineDistance('hand-offset-share', { value: 1, low: -1, high: 3 })).toMatchObject({
    value: 1,
    low: 0,
    high: 3,
  });
  expect(lineDistance('accent-to-tap-ratio', { value: 6, low: 5, high: 9 })).toMatchObject({
    value: 2,
    low: 0,
    high: 3,
  });
  expect(() => lineMark('loudness', { value: 1, low: 0, high: 2 })).toThrow(RangeError);
});
