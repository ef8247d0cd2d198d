import { keptJson } from './kept-json.ts';
import type { LibraryDb } from './library.ts';
import type { LineFigures } from './line-figures.ts';
import type { DimensionScore } from './listed-takes.ts';
import { dayBegins } from './take-filter.ts';

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
  /** Of the take it is part of. */
  readonly score: number | null;
  readonly dimensions: readonly DimensionScore[];
  /** Null where it isn't put down beside the scores: its result tells it. */
  readonly endGaveWay: 0 | 1 | null;
}

interface Asked {
  readonly personId: string | null;
  readonly fromDay?: string;
  readonly toDay?: string;
}

/** The newest playings of an exercise that are looked at. */
const mostPlays = 5000;

/** A player's playings of one exercise, oldest first, for comparing days and weeks. */
export async function listLinePlays(
  db: LibraryDb,
  { exerciseId, ...asked }: Asked & { readonly exerciseId: string },
): Promise<readonly LinePlay[]> {
  const rows = await linesWithTakes(db, asked)
    .where('takeLine.exerciseId', '=', exerciseId)
    .orderBy('takeLine.recordedAt', 'desc')
    .orderBy('takeLine.takeId', 'desc')
    .limit(mostPlays)
    .execute();
  return rows.map(linePlay).reverse();
}

/** A player's playings of several exercises, each oldest first: one walk along the index by player. */
export async function linePlaysByExercise(
  db: LibraryDb,
  { exerciseIds, ...asked }: Asked & { readonly exerciseIds: readonly string[] },
): Promise<ReadonlyMap<string, readonly LinePlay[]>> {
  const rows = await linesWithTakes(db, asked)
    .where('takeLine.exerciseId', 'in', exerciseIds)
    .orderBy('takeLine.exerciseId')
    .orderBy('takeLine.recordedAt')
    .orderBy('takeLine.takeId')
    .execute();
  const plays = new Map<string, LinePlay[]>();
  for (const row of rows) {
    const own = plays.get(row.exerciseId);
    if (own === undefined) plays.set(row.exerciseId, [linePlay(row)]);
    else own.push(linePlay(row));
  }
  return new Map([...plays].map(([id, own]) => [id, own.slice(-mostPlays)]));
}

const linesWithTakes = (db: LibraryDb, { personId, fromDay, toDay }: Asked) =>
  db
    .selectFrom('takeLine')
    .innerJoin('take', 'take.id', 'takeLine.takeId')
    .select([
      'takeLine.exerciseId',
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
      'take.score',
      'take.dimensions',
      'take.endGaveWay',
    ])
    .where('takeLine.personId', 'is', personId)
    .$if(fromDay !== undefined, (query) =>
      query.where('takeLine.recordedAt', '>=', dayBegins(fromDay!)).where('takeLine.day', '>=', fromDay!),
    )
    .$if(toDay !== undefined, (query) => query.where('takeLine.day', '<=', toDay!));

type LineRow = Awaited<ReturnType<ReturnType<typeof linesWithTakes>['execute']>>[number];

const linePlay = ({ exerciseId: _, ...row }: LineRow): LinePlay => ({
  ...row,
  figures: keptJson<LineFigures>(row.figures),
  dimensions: keptJson<DimensionScore[]>(row.dimensions),
});
