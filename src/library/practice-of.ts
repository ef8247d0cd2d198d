import { type PracticeEntry, type PracticeLoad, practiceLoad } from '../core/progress/practice-load.ts';
import type { LibraryDb } from './library.ts';
import { practiceDays } from './practice.ts';

/** A player's practice between two days, recorded and written down. */
export async function practiceOf(
  db: LibraryDb,
  asked: { readonly personId: string | null; readonly fromDay: string; readonly toDay: string },
): Promise<PracticeLoad> {
  const days = await practiceDays(db, asked);
  return practiceLoad(
    days.flatMap((day): PracticeEntry[] => [
      ...(day.takes > 0
        ? [
            {
              day: day.day,
              minutes: day.recordedMinutes,
              kind: 'recorded' as const,
              strokes: { R: day.strokesRight, L: day.strokesLeft, untold: day.strokesOther },
            },
          ]
        : []),
      ...(day.writtenMinutes > 0
        ? [
            {
              day: day.day,
              minutes: day.writtenMinutes,
              kind: 'logged' as const,
              strokes: { R: day.writtenRight, L: day.writtenLeft, untold: 0 },
            },
          ]
        : []),
    ]),
  );
}
