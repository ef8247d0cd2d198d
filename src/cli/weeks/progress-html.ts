import type { GuessRecord } from '../../core/progress/guess-record.ts';
import type { LibraryDb } from '../../library/library.ts';
import type { ExerciseCourse } from '../../library/player-progress.ts';
import { practiceOf } from '../../library/practice-of.ts';
import { progressPage, progressPictures } from '../../report/weeks/progress-page.ts';
import { writeWeekPage } from '../../report/weeks/write-week-page.ts';

interface Asked {
  readonly personId: string;
  readonly name: string;
  readonly fromDay: string;
  readonly toDay: string;
  readonly discomfort: boolean;
  readonly guesses: readonly GuessRecord[];
  readonly shown: readonly ExerciseCourse[];
}

/** A player's progress as the text of one HTML file. */
export async function progressHtml(
  db: LibraryDb,
  { name, discomfort, shown, guesses, ...days }: Asked,
): Promise<string> {
  const page = {
    player: name,
    today: days.toDay,
    discomfort,
    guesses,
    load: await practiceOf(db, days),
    exercises: shown.map(({ exercise, plays, progress }) => ({ label: exercise.label, plays, progress })),
  };
  return writeWeekPage((parts) => progressPage(page, parts), progressPictures(page));
}
