import { localDay } from '../../library/local-day.ts';
import { readKept, writeKept } from '../../shell/kept.ts';

const name = 'set-up';

/** Notes which reference takes from now on belong to. */
export const noteSetUp = (id: string, now: number): void => writeKept(name, { id, day: localDay(now) });

/** The reference that takes of today belong to, or null where none was played today. */
export function setUpOfToday(now: number): string | null {
  const { id, day } = (readKept(name) ?? {}) as { id?: unknown; day?: unknown };
  return typeof id === 'string' && day === localDay(now) ? id : null;
}
