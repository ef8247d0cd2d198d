import { parseSheet } from '../core/exercise/parse-sheet.ts';
import type { Assignment } from './assignments.ts';
import type { LibraryDb } from './library.ts';

/** A take that an assignment asked for. */
export interface AssignmentPlay {
  readonly takeId: string;
  readonly day: string;
  readonly recordedAt: number;
  readonly score: number | null;
  /** BPM as played, or as asked where nothing was found; null where neither is known. */
  readonly bpm: number | null;
}

/** As due days are: an assignment handed out in the evening counts what was played on that day. */
const aDay = 86_400_000;

/**
 * Takes played to an assignment since the day it was set, oldest first: those of its player that hold every exercise on
 * its sheet, at whatever tempo, whether or not they were graded against that very sheet. What came after it was done
 * doesn't count.
 *
 * @example (await assignmentPlays(db, assignment)).length // 3
 */
export async function assignmentPlays(
  db: LibraryDb,
  { sheetText, personId, setAt, doneAt }: Pick<Assignment, 'sheetText' | 'personId' | 'setAt' | 'doneAt'>,
): Promise<readonly AssignmentPlay[]> {
  const parsed = parseSheet(sheetText);
  if (!parsed.ok) return [];
  const exercises = [...new Set(parsed.sheet.lines.map(({ id }) => id))];
  const rows = await db
    .selectFrom('takeLine')
    .innerJoin('take', 'take.id', 'takeLine.takeId')
    .select(['take.id as takeId', 'take.day', 'take.recordedAt', 'take.score', 'take.bpmPlayed'])
    .select(['take.bpmLow'])
    .where('takeLine.exerciseId', 'in', exercises)
    .where('takeLine.isFirst', '=', 1)
    .where('takeLine.recordedAt', '>=', setAt - aDay)
    .$if(personId !== null, (query) => query.where('takeLine.personId', '=', personId!))
    .$if(doneAt !== null, (query) => query.where('takeLine.recordedAt', '<=', doneAt!))
    .groupBy('take.id')
    .having(({ fn }) => fn.count('takeLine.exerciseId').distinct(), '=', exercises.length)
    .orderBy('take.recordedAt')
    .execute();
  return rows.map(({ bpmPlayed, bpmLow, ...play }) => ({ ...play, bpm: bpmPlayed ?? bpmLow }));
}
