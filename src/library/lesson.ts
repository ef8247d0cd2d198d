import { dayNumber, dayOf } from '../core/progress/day-number.ts';
import { type ExercisePlay, hasFreshTake, nextOfPlays } from '../core/progress/exercise-progress.ts';
import type { Lesson } from '../core/progress/lesson.ts';
import { weighedFigures } from '../core/progress/line-mark.ts';
import { freshDays } from '../core/progress/next-tempo.ts';
import { exercisesCompared } from '../core/progress/periods-compared.ts';
import { tempoTold } from '../core/progress/tempo-told.ts';
import { type PlayedLine, weakestLines } from '../core/progress/weakest-lines.ts';
import type { Reason } from '../core/result/take-result.ts';
import { assignmentPlays } from './assignment-plays.ts';
import { listAssignments } from './assignments.ts';
import { discomfortNoted } from './discomfort-noted.ts';
import { comparedPlays } from './exercise-plays.ts';
import type { LibraryDb } from './library.ts';
import { type LinePlay, linePlaysByExercise } from './line-plays.ts';
import { listPeople } from './people.ts';
import { type PlayedExercise, playedExercises } from './played-exercises.ts';
import { exerciseCourse } from './player-progress.ts';
import { listDiscomfort, practiceDays } from './practice.ts';
import { dayBegins } from './take-filter.ts';

interface AskedLesson {
  readonly personId: string;
  readonly since: string;
  readonly today: string;
}

const weakLines = 2;
/** Lines that are weighed against each other at most, those played last. Our judgement. */
const mostWeighed = 200;
/** A figure from fewer strokes says too little of a line. Our judgement. */
const fewestStrokes = 12;
/**
 * Days before the last lesson that those since are held against. What a player was years ago would make this week's
 * playing a change. Our judgement.
 */
const daysBefore = 84;

/** Gathers what a lesson looks back on: from the day of the last one up to today. */
export async function lessonOf(db: LibraryDb, asked: AskedLesson): Promise<Lesson> {
  return judgedTogether([await gathered(db, asked)], asked.since)[0]!;
}

/** A player of a studio and the lesson with them. Names are untrusted. */
export interface LessonOfPlayer {
  readonly player: string;
  readonly lesson: Lesson;
}

/** The lessons with everyone: what is said to have changed holds for all of them together. */
export async function lessonsOf(
  db: LibraryDb,
  { since, today }: Omit<AskedLesson, 'personId'>,
): Promise<readonly LessonOfPlayer[]> {
  const people = await listPeople(db);
  const all: Gathered[] = [];
  for (const { id } of people) all.push(await gathered(db, { personId: id, since, today }));
  return judgedTogether(all, since).map((lesson, i) => ({ player: people[i]!.name, lesson }));
}

interface Gathered extends Omit<Lesson, 'exercises'> {
  readonly played: readonly {
    readonly exercise: PlayedExercise;
    readonly plays: readonly ExercisePlay[];
    readonly next: Reason;
  }[];
}

function judgedTogether(all: readonly Gathered[], since: string): readonly Lesson[] {
  const compared = exercisesCompared(
    all.flatMap(({ played }) => played.map(({ plays }) => plays)),
    since,
  );
  let at = 0;
  return all.map(({ played, ...lesson }) => ({
    ...lesson,
    exercises: played.map(({ exercise, next }) => ({ exercise, next, compared: compared[at++]! })),
  }));
}

async function gathered(db: LibraryDb, { personId, since, today }: AskedLesson): Promise<Gathered> {
  const exercises = await playedExercises(db, personId, since);
  const exerciseIds = exercises.map(({ id }) => id);
  const fromDay = dayOf(dayNumber(since) - daysBefore);
  const lines = await linePlaysByExercise(db, { personId, exerciseIds, fromDay });
  const at = dayNumber(today);
  const now = {
    discomfort: await discomfortNoted(db, personId, today),
    daysAgo: (day: string) => at - dayNumber(day),
  };
  const played: Gathered['played'][number][] = [];
  for (const exercise of exercises) {
    const asked = { exerciseId: exercise.id, freshFrom: dayOf(at - freshDays) };
    const plays = await comparedPlays(db, lines.get(exercise.id) ?? [], asked);
    const next = hasFreshTake(plays, now)
      ? nextOfPlays(plays, now)
      : (await exerciseCourse(db, { personId, today, exercise })).progress.next;
    played.push({ exercise, plays, next });
  }
  const newest = exercises.flatMap((exercise) => newestLine(exercise, lines.get(exercise.id) ?? [], since));
  const days = { personId, fromDay: since, toDay: today };
  const discomfort = await listDiscomfort(db, days);
  return {
    since,
    today,
    assignments: await assignmentsOf(db, personId, since),
    days: await practiceDays(db, days),
    weakest: weakestLines(newest.slice(0, mostWeighed), weakLines),
    played,
    remarks: await remarksSince(db, personId, since),
    discomfortDays: [...new Set(discomfort.map(({ day }) => day))],
  };
}

function newestLine(
  { id: exerciseId, label }: PlayedExercise,
  plays: readonly LinePlay[],
  since: string,
): PlayedLine[] {
  const measured = plays
    .filter(({ day }) => day >= since)
    .map((play) => ({ ...play, figures: weighed(play) }));
  const newest = measured.findLast(({ figures }) => Object.keys(figures).length > 0);
  if (newest === undefined) return [];
  const { takeId, place, day, bpm, bpmPlayed, pad, sticks, device, figures } = newest;
  const setUp = JSON.stringify([pad, sticks, device]);
  return [{ exerciseId, label, takeId, place, day, bpm: tempoTold(bpm, bpmPlayed), setUp, figures }];
}

function weighed({ figures }: LinePlay): PlayedLine['figures'] {
  return Object.fromEntries(
    weighedFigures.flatMap(({ id }) => {
      const [value, low, high, strokes] = figures[id] ?? [0, 0, 0, 0];
      return strokes < fewestStrokes ? [] : [[id, { value, low, high }]];
    }),
  );
}

async function assignmentsOf(db: LibraryDb, personId: string, since: string): Promise<Lesson['assignments']> {
  const all = await listAssignments(db, { personId });
  const open = all.filter(({ doneAt }) => doneAt === null);
  const done = all.filter(({ doneAt }) => doneAt !== null && doneAt >= Date.parse(`${since}T00:00:00Z`));
  const shown = [...open, ...done.slice(0, 1)];
  return Promise.all(
    shown.map(async (assignment) => ({ assignment, plays: await assignmentPlays(db, assignment) })),
  );
}

const mostRemarks = 20;

async function remarksSince(db: LibraryDb, personId: string, since: string): Promise<Lesson['remarks']> {
  const rows = await db
    .selectFrom('remark')
    .innerJoin('take', 'take.id', 'remark.takeId')
    .selectAll('remark')
    .select('take.day')
    .where('take.personId', '=', personId)
    .where('take.recordedAt', '>=', dayBegins(since))
    .where('take.day', '>=', since)
    .orderBy('take.recordedAt', 'desc')
    .orderBy('remark.moment')
    .limit(mostRemarks)
    .execute();
  return rows;
}
