import { expect, it } from 'vitest';
import { breakDue } from '../../../src/core/progress/break-due.ts';

it('a break is due after fifty minutes without ten of rest', () => {
  expect(
    breakDue([
      { from: 0, to: 30 },
      { from: 33, to: 55 },
    ]),
  ).toEqual({ minutes: 55, due: true });
  expect(
    breakDue([
      { from: 0, to: 45 },
      { from: 55, to: 80 },
    ]),
  ).toEqual({ minutes: 25, due: false });
  expect(breakDue([{ from: 0, to: 49.9 }]).due).toBe(false);
  expect(breakDue([])).toEqual({ minutes: 0, due: false });
});
