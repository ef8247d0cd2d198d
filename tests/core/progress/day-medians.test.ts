import { expect, it } from 'vitest';
import { dayMedians } from '../../../src/core/progress/day-medians.ts';

it('a day is one value, the median of its takes, in order of days', () => {
  const values = [
    { day: '2026-03-10', value: 4 },
    { day: '2026-03-09', value: 5 },
    { day: '2026-03-09', value: 7 },
    { day: '2026-03-09', value: 30 },
  ];
  expect(dayMedians(values)).toEqual([
    { day: '2026-03-09', median: 7, takes: 3 },
    { day: '2026-03-10', median: 4, takes: 1 },
  ]);
  expect(dayMedians([])).toEqual([]);
});
