const dayPattern = /^(\d{4})-(\d{2})-(\d{2})$/;
const msInDay = 86_400_000;

/**
 * Days from 1 January 1970 to a calendar day (proleptic Gregorian, ISO 8601). RangeError for what is no day.
 *
 * @example dayNumber('1970-01-10') // 9
 */
export function dayNumber(day: string): number {
  const found = dayPattern.exec(day);
  const [year, month, date] = (found?.slice(1) ?? []).map(Number) as [number, number, number];
  const at = new Date(found === null ? Number.NaN : Date.UTC(year, month - 1, date));
  // Read back as it was written: there is no 30 February. NaN is like nothing.
  const same = at.getUTCDate() === date && at.getUTCMonth() === month - 1 && at.getUTCFullYear() === year;
  if (!same) throw new RangeError(`${day} is no day`);
  return at.getTime() / msInDay;
}

/** The calendar day that lies `number` days after 1 January 1970. */
export function dayOf(number: number): string {
  return new Date(number * msInDay).toISOString().slice(0, 10);
}

/**
 * The Monday that begins a day's week (ISO 8601: weeks begin on Monday).
 *
 * @example weekOf('2026-03-11') // '2026-03-09'
 */
export function weekOf(day: string): string {
  const number = dayNumber(day);
  return dayOf(number - ((((number + 3) % 7) + 7) % 7));
}
