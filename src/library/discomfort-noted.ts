import { dayNumber, dayOf } from '../core/progress/day-number.ts';
import type { LibraryDb } from './library.ts';
import { listDiscomfort } from './practice.ts';

/** A discomfort note blocks advice on tempo for so many days; common practice is to go on only when it is gone. */
const discomfortDays = 7;

/** Whether a player noted discomfort in the last days. */
export async function discomfortNoted(
  db: LibraryDb,
  personId: string | null,
  today: string,
): Promise<boolean> {
  const at = dayNumber(today);
  const notes = await listDiscomfort(db, {
    personId,
    fromDay: dayOf(at - discomfortDays),
    toDay: dayOf(at + 1),
  });
  return notes.length > 0;
}
