import type { Lesson } from '../core/progress/lesson.ts';
import { exercisesCompared } from '../core/progress/periods-compared.ts';
import { type PlayedLine, weakestLines } from '../core/progress/weakest-lines.ts';
import { assignmentPlays } from './assignment-plays.ts';
import { listAssignments } from './assignments.ts';
import type { LibraryDb } from './library.ts';
import { listLinePlays } from './line-plays.ts';
import { playedExercises } from './played-exercises.ts';
import { type ExerciseCourse, exerciseCourse } from './player-progress.ts';
import { listDiscomfort, practiceDays } from './practice.ts';

interface AskedLesson {
  readonly personId: string;
  readonly since: string;
  readonly today: string;
}

const weakLines = 2;
const spreadShare = 'timing-spread-share';
const fewestLeft = 12;

/** Gathers what a lesson looks back on: from the day of the last one up to today. */
export async function lessonOf(db: LibraryDb, { personId, since, today }: AskedLesson): Promise<Lesson> {
  const played: ExerciseCourse[] = [];
  for (const exercise of await playedExercises(db, personId, since))
    played.push(await exerciseCourse(db, { personId, today, exercise }));
  const compared = exercisesCompared(
    played.map(({ plays }) => plays),
    since,
  );
  const lines = (await Promise.all(played.map(({ exercise }) => newestLine(db, exercise, personId, since))))
    .flat()
    .slice(0, 200);
  const days = { personId, fromDay: since, toDay: today };
  const discomfort = await listDiscomfort(db, days);
  return {
    since,
    today,
    assignments: await assignmentsOf(db, personId, since),
    days: await practiceDays(db, days),
    weakest: weakestLines(lines, weakLines),
    lines: lines.length,
    exercises: played.map(({ exercise, progress }, i) => ({ exercise, progress, compared: compared[i]! })),
    remarks: await remarksSince(db, personId, since),
    discomfortDays: [...new Set(discomfort.map(({ day }) => day))],
  };
}

async function newestLine(
  db: LibraryDb,
  exercise: ExerciseCourse['exercise'],
  personId: string,
  since: string,
): Promise<PlayedLine[]> {
  const plays = await listLinePlays(db, { personId, exerciseId: exercise.id, fromDay: since });
  const newest = plays.findLast(({ figures }) => figures[spreadShare] !== undefined);
  if (newest === undefined) return [];
  const [value, low, high, strokes] = newest.figures[spreadShare]!;
  if (strokes < fewestLeft) return [];
  const { takeId, place, day, bpm, bpmPlayed } = newest;
  const { id: exerciseId, label } = exercise;
  return [{ exerciseId, label, takeId, place, day, bpm: bpm ?? bpmPlayed, spread: { value, low, high } }];
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
    .where('take.day', '>=', since)
    .orderBy('take.recordedAt', 'desc')
    .orderBy('remark.moment')
    .limit(mostRemarks)
    .execute();
  return rows;
}
