import { expect, it } from 'vitest';
import { restDue } from '../../../src/core/progress/rest-due.ts';

it('a rest is due after fifty minutes of playing without ten of rest', () => {
  const minutes = (from: number, to: number) => ({ from: from * 60_000, to: to * 60_000 });
  const due = (played: ReturnType<typeof minutes>[], now: number) => restDue(played, now * 60_000);
  expect(due([], 0)).toBe(false);
  expect(due([minutes(0, 20)], 20)).toBe(false);
  expect(due([minutes(0, 20), minutes(22, 51)], 51)).toBe(true);
  // Rested for ten minutes in between, or since.
  expect(due([minutes(0, 25), minutes(35, 60)], 60)).toBe(false);
  expect(due([minutes(0, 51)], 61)).toBe(false);
  expect(due([minutes(22, 51), minutes(0, 20)], 52)).toBe(true);
  // A clock that was set back in between, or since: what it put into the future is no reason to stop for ever.
  expect(due([minutes(500_000, 500_051)], 10)).toBe(false);
  expect(due([minutes(30, 12)], 40)).toBe(false);
});
