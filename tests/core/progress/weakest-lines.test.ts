import { expect, it } from 'vitest';
import { type PlayedLine, weakestLines } from '../../../src/core/progress/weakest-lines.ts';

const played = (label: string, value: number, half = 0.5): PlayedLine => ({
  exerciseId: label,
  label,
  takeId: 't',
  place: 0,
  day: '2026-03-09',
  bpm: 92,
  spread: { value, low: value - half, high: value + half },
});

it("names the most uneven first, and says which stand apart from all that aren't named", () => {
  const lines = [played('a', 3), played('b', 6), played('c', 3.6), played('d', 4.2)];
  expect(weakestLines(lines, 2).map(({ label, apart }) => [label, apart])).toEqual([
    ['b', true],
    ['d', false],
  ]);
});

it('says of nothing that it stands apart where nothing else was played', () => {
  expect(weakestLines([played('a', 3), played('b', 9)], 2).map(({ apart }) => apart)).toEqual([false, false]);
  expect(weakestLines([], 2)).toEqual([]);
});
