import { describe, expect, it } from 'vitest';
import { dayNumber, dayOf, weekOf } from '../../../src/core/progress/day-number.ts';

describe('days', () => {
  it('count from 1970', () => {
    expect(dayNumber('1970-01-10')).toBe(9);
    expect(dayNumber('1969-12-31')).toBe(-1);
    expect(dayOf(dayNumber('2024-02-29'))).toBe('2024-02-29');
  });

  it.each(['2026-02-29', '2026-13-01', '9.3.2026', '', '2026-3-9'])('%j is none', (day) => {
    expect(() => dayNumber(day)).toThrow(RangeError);
  });

  it('weeks begin on Monday, at both ends of a year and before 1970 too', () => {
    // ISO 8601: 2026-W53 runs from 28 December 2026 to 3 January 2027.
    expect(weekOf('2027-01-03')).toBe('2026-12-28');
    expect(weekOf('2027-01-04')).toBe('2027-01-04');
    expect(weekOf('2026-03-11')).toBe('2026-03-09');
    expect(weekOf('1969-12-31')).toBe('1969-12-29');
    for (let number = -400; number < 400; number++)
      expect(new Date(`${weekOf(dayOf(number))}T00:00:00Z`).getUTCDay()).toBe(1);
  });
});
