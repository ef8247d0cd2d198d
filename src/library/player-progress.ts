import { dayNumber, dayOf } from '../core/progress/day-number.ts';
import {
  type ExercisePlay,
  type ExerciseProgress,
  exerciseProgress,
} from '../core/progress/exercise-progress.ts';
import type { GuessRecord } from '../core/progress/guess-record.ts';
import { freshDays } from '../core/progress/next-tempo.ts';
import type { PracticeLoad } from '../core/progress/practice-load.ts';
import { discomfortNoted } from './discomfort-noted.ts';
import { comparedPlays } from './exercise-plays.ts';
import { judgedGuesses } from './guess.ts';
import type { LibraryDb } from './library.ts';
import { type LinePlay, linePlaysByExercise, listLinePlays } from './line-plays.ts';
import { type PlayedExercise, playedExercises } from './played-exercises.ts';
import { practiceOf } from './practice-of.ts';

export interface ExerciseCourse {
  readonly exercise: PlayedExercise;
  readonly plays: readonly ExercisePlay[];
  readonly progress: ExerciseProgress;
}

interface AskedProgress {
  /** Whose takes; null for those without a player. */
  readonly personId: string | null;
  /** Today where the player is. */
  readonly today: string;
  /** Takes from this day on; all without. */
  readonly fromDay?: string | undefined;
}

/** Before any take. */
const firstDay = '1970-01-01';

/** How one exercise of a player goes, with the tempo to try next. */
export async function exerciseCourse(
  db: LibraryDb,
  { personId, today, fromDay, exercise }: AskedProgress & { readonly exercise: PlayedExercise },
): Promise<ExerciseCourse> {
  const discomfort = await discomfortNoted(db, personId, today);
  const since = fromDay === undefined ? {} : { fromDay };
  const lines = await listLinePlays(db, { personId, exerciseId: exercise.id, ...since });
  return courseOf(db, { today, exercise, discomfort, lines });
}

/** The course of several exercises, read at once. */
export async function exerciseCourses(
  db: LibraryDb,
  { personId, today, fromDay, exercises }: AskedProgress & { readonly exercises: readonly PlayedExercise[] },
): Promise<readonly ExerciseCourse[]> {
  const discomfort = await discomfortNoted(db, personId, today);
  const since = fromDay === undefined ? {} : { fromDay };
  const exerciseIds = exercises.map(({ id }) => id);
  const lines = await linePlaysByExercise(db, { personId, exerciseIds, ...since });
  const courses: ExerciseCourse[] = [];
  for (const exercise of exercises)
    courses.push(await courseOf(db, { today, exercise, discomfort, lines: lines.get(exercise.id) ?? [] }));
  return courses;
}

async function courseOf(
  db: LibraryDb,
  {
    today,
    exercise,
    discomfort,
    lines,
  }: {
    readonly today: string;
    readonly exercise: PlayedExercise;
    readonly discomfort: boolean;
    readonly lines: readonly LinePlay[];
  },
): Promise<ExerciseCourse> {
  const freshFrom = dayOf(dayNumber(today) - freshDays);
  const plays = await comparedPlays(db, lines, { exerciseId: exercise.id, freshFrom });
  const daysAgo = (day: string) => dayNumber(today) - dayNumber(day);
  return { exercise, plays, progress: exerciseProgress(plays, { discomfort, daysAgo }) };
}

/**
 * A player's exercises over the weeks, the one played last first, with how much was practised. `limit`: so many exercises
 * at most; of ten years there may be hundreds, which nobody looks at on one page.
 */
export async function playerProgress(
  db: LibraryDb,
  { limit, ...asked }: AskedProgress & { readonly limit?: number },
): Promise<{
  readonly exercises: readonly ExerciseCourse[];
  /** Exercises played besides, which the limit left out. */
  readonly more: number;
  readonly load: PracticeLoad;
  readonly guesses: readonly GuessRecord[];
  readonly discomfort: boolean;
}> {
  const { personId, today, fromDay = firstDay } = asked;
  const discomfort = await discomfortNoted(db, personId, today);
  const played = await playedExercises(db, personId, asked.fromDay);
  const exercises = played.slice(0, limit);
  return {
    exercises: await exerciseCourses(db, { ...asked, exercises }),
    more: played.length - exercises.length,
    load: await practiceOf(db, { personId, fromDay, toDay: today }),
    guesses: await judgedGuesses(db, { personId }),
    discomfort,
  };
}

/** The tempo to try next for an exercise, and from how many takes that is known; null where nothing of it is kept. */
export async function nextTempoOf(
  db: LibraryDb,
  { exerciseId, ...asked }: AskedProgress & { readonly exerciseId: string },
): Promise<Pick<ExerciseProgress, 'plays' | 'days' | 'next' | 'cleanestTempo'> | null> {
  const exercise = { id: exerciseId, label: '', notation: '' };
  const { progress } = await exerciseCourse(db, { ...asked, exercise });
  const { plays, days, next, cleanestTempo } = progress;
  return plays === 0 ? null : { plays, days, next, cleanestTempo };
}
