import { keptJson } from './kept-json.ts';
import type { LibraryDb } from './library.ts';
import type { LineFigures } from './line-figures.ts';

/** One playing of an exercise, with what must be alike for two of them to be compared. */
export interface LinePlay {
  readonly takeId: string;
  readonly place: number;
  readonly day: string;
  readonly recordedAt: number;
  readonly bpm: number | null;
  readonly bpmPlayed: number | null;
  readonly repeats: number;
  readonly technique: string;
  readonly pad: string;
  readonly sticks: string;
  readonly device: string;
  readonly setUpId: string | null;
  readonly figures: LineFigures;
}

/** A player's playings of one exercise, oldest first, for comparing days and weeks. */
export async function listLinePlays(
  db: LibraryDb,
  {
    personId,
    exerciseId,
    fromDay,
    toDay,
    limit = 5000,
  }: {
    readonly personId: string | null;
    readonly exerciseId: string;
    readonly fromDay?: string;
    readonly toDay?: string;
    readonly limit?: number;
  },
): Promise<readonly LinePlay[]> {
  const rows = await db
    .selectFrom('takeLine')
    .innerJoin('take', 'take.id', 'takeLine.takeId')
    .select([
      'takeLine.takeId',
      'takeLine.place',
      'takeLine.day',
      'takeLine.recordedAt',
      'takeLine.bpm',
      'takeLine.bpmPlayed',
      'takeLine.repeats',
      'takeLine.figures',
      'take.technique',
      'take.pad',
      'take.sticks',
      'take.device',
      'take.setUpId',
    ])
    .where('takeLine.personId', 'is', personId)
    .where('takeLine.exerciseId', '=', exerciseId)
    .$if(fromDay !== undefined, (query) => query.where('takeLine.day', '>=', fromDay!))
    .$if(toDay !== undefined, (query) => query.where('takeLine.day', '<=', toDay!))
    .orderBy('takeLine.recordedAt', 'desc')
    .orderBy('takeLine.takeId', 'desc')
    .limit(limit)
    .execute();
  return rows.map((row) => ({ ...row, figures: keptJson<LineFigures>(row.figures) })).reverse();
}
