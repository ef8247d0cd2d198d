import { LibraryFault } from './library-fault.ts';

/**
 * Throws `LibraryFault` for a text that is no calendar day.
 *
 * @example checkDay('Day of the take', '2026-03-09')
 */
export function checkDay(what: string, day: string): void {
  const isDay =
    /^\d{4}-\d{2}-\d{2}$/.test(day) && new Date(`${day}T00:00:00Z`).toJSON()?.slice(0, 10) === day;
  if (!isDay)
    throw new LibraryFault('value-out-of-range', { what, value: day, expected: 'Write it like 2026-03-09.' });
}
