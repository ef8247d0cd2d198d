import { parseSheet } from '../core/exercise/parse-sheet.ts';
import { type AssignmentTempo, assignmentTempo } from '../core/progress/assignment-tempo.ts';
import type { Assignment } from './assignments.ts';
import type { LibraryDb } from './library.ts';

/** A take with the exercises of an assignment. */
export interface AssignmentPlay {
  readonly takeId: string;
  readonly day: string;
  readonly recordedAt: number;
  readonly score: number | null;
  /** BPM as played, or as asked where nothing was found; null where neither is known. */
  readonly bpm: number | null;
  /** Whether that is what the assignment asked for. */
  readonly tempo: AssignmentTempo;
}

/** An assignment handed out in the evening counts what was played earlier that day. */
const aDay = 86_400_000;

/**
 * Takes with an assignment's exercises since the day it was set, oldest first: those of its player that hold every exercise
 * on its sheet, whether or not they were graded against that very sheet, each with how its tempo stands to the one asked.
 * What came after it was done doesn't count.
 *
 * @example (await assignmentPlays(db, assignment)).filter(({ tempo }) => tempo === 'asked').length // 3
 */
export async function assignmentPlays(
  db: LibraryDb,
  { sheetText, personId, bpm, setAt, doneAt }: Asked,
): Promise<readonly AssignmentPlay[]> {
  const parsed = parseSheet(sheetText);
  if (!parsed.ok) return [];
  const asked = parsed.sheet.lines.map((line) => ({ exerciseId: line.id, bpm: bpm ?? line.bpm }));
  const exercises = [...new Set(asked.map(({ exerciseId }) => exerciseId))];
  const withAll = db
    .selectFrom('takeLine')
    .select('takeLine.takeId')
    .where('takeLine.exerciseId', 'in', exercises)
    .where('takeLine.isFirst', '=', 1)
    .where('takeLine.recordedAt', '>=', setAt - aDay)
    .$if(personId !== null, (query) => query.where('takeLine.personId', '=', personId!))
    .$if(doneAt !== null, (query) => query.where('takeLine.recordedAt', '<=', doneAt!))
    .groupBy('takeLine.takeId')
    .having(({ fn }) => fn.count('takeLine.exerciseId').distinct(), '=', exercises.length);
  const lines = await db
    .selectFrom('take')
    .innerJoin('takeLine', 'takeLine.takeId', 'take.id')
    .select([
      'take.id as takeId',
      'take.day',
      'take.recordedAt',
      'take.score',
      'take.bpmPlayed',
      'take.bpmLow',
    ])
    .select(['takeLine.exerciseId', 'takeLine.bpm as lineBpm', 'takeLine.bpmPlayed as lineBpmPlayed'])
    .where('take.id', 'in', withAll)
    .where('takeLine.exerciseId', 'in', exercises)
    .orderBy('take.recordedAt')
    .orderBy('take.id')
    .execute();
  const takes = new Map<string, (typeof lines)[number][]>();
  for (const line of lines) takes.set(line.takeId, [...(takes.get(line.takeId) ?? []), line]);
  return [...takes.values()].map((own) => {
    const { takeId, day, recordedAt, score, bpmPlayed, bpmLow } = own[0]!;
    const played = own.map((line) => ({
      exerciseId: line.exerciseId,
      bpm: line.lineBpmPlayed ?? line.lineBpm,
    }));
    const tempo = assignmentTempo(asked, played);
    return { takeId, day, recordedAt, score, bpm: bpmPlayed ?? bpmLow, tempo };
  });
}

type Asked = Pick<Assignment, 'sheetText' | 'personId' | 'bpm' | 'setAt' | 'doneAt'>;
