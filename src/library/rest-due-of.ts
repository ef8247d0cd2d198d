import { restDue } from '../core/progress/rest-due.ts';
import type { LibraryDb } from './library.ts';

/** What began longer ago plays no part, ms. */
const lookedBack = 3 * 3_600_000;

/**
 * Whether a player's takes up to now (ms since 1970) make a rest due; `restDue` says when. A take's moment is that of its
 * file, so its end at the latest: it counts from its own length before to then.
 */
export async function restDueOf(db: LibraryDb, personId: string | null, now: number): Promise<boolean> {
  const takes = await db
    .selectFrom('take')
    .select(['recordedAt', 'duration'])
    .where('personId', 'is', personId)
    .where('recordedAt', '>', now - lookedBack)
    .where('recordedAt', '<=', now)
    .execute();
  return restDue(
    takes.map(({ recordedAt, duration }) => ({ from: recordedAt - 1000 * duration, to: recordedAt })),
    now,
  );
}
