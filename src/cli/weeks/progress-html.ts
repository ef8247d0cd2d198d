import type { ExercisePlay, ExerciseProgress } from '../../core/progress/exercise-progress.ts';
import type { GuessRecord } from '../../core/progress/guess-record.ts';
import type { LibraryDb } from '../../library/library.ts';
import { progressPage, progressPictures } from '../../report/weeks/progress-page.ts';
import { writeWeekPage } from '../../report/weeks/write-week-page.ts';
import type { PlayedExercise } from '../library/played-exercises.ts';
import { practiceOf } from './practice-of.ts';

interface Asked {
  readonly personId: string;
  readonly name: string;
  readonly fromDay: string;
  readonly toDay: string;
  readonly discomfort: boolean;
  readonly guesses: readonly GuessRecord[];
  readonly shown: readonly {
    readonly exercise: PlayedExercise;
    readonly plays: readonly ExercisePlay[];
    readonly progress: ExerciseProgress;
  }[];
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
