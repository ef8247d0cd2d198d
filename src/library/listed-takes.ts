import { sql } from 'kysely';
import { keptJson } from './kept-json.ts';
import type { LibraryDb } from './library.ts';
import type { TakeTable } from './library-schema.ts';

export interface DimensionScore {
  readonly id: string;
  readonly score: number;
  readonly word: 'secure' | 'nearly' | 'not-yet';
}

/** A take as listings show it. */
export interface ListedTake extends Omit<TakeTable, 'dimensions' | 'graded' | 'endGaveWay'> {
  readonly graded: boolean;
  readonly dimensions: readonly DimensionScore[];
  /** The sheet's title; may be empty. */
  readonly title: string;
  /** Names of its lines in order; a name may be empty. */
  readonly lines: readonly string[];
  /** The tempo of each line in order, BPM: asked for and played; null where it was left open, or wasn't played. */
  readonly tempos: readonly { readonly asked: number | null; readonly played: number | null }[];
  readonly personName: string | null;
  readonly tags: readonly string[];
  readonly remarks: number;
  readonly audioBytes: number | null;
}

/** The takes of these ids, in the order of the ids; ids that aren't there are left out. */
export async function listedTakes(db: LibraryDb, ids: readonly string[]): Promise<readonly ListedTake[]> {
  if (ids.length === 0) return [];
  const rows = await db
    .selectFrom('take')
    .innerJoin('sheet', 'sheet.id', 'take.sheetId')
    .leftJoin('person', 'person.id', 'take.personId')
    .leftJoin('audio', 'audio.hash', 'take.audioHash')
    .selectAll('take')
    .select(['sheet.title', 'person.name as personName', 'audio.bytes as audioBytes'])
    .select(({ selectFrom }) =>
      selectFrom('remark')
        .select(sql<number>`count(*)`.as('remarks'))
        .whereRef('remark.takeId', '=', 'take.id')
        .as('remarks'),
    )
    .where('take.id', 'in', ids)
    .execute();
  const sheetLines = await db
    .selectFrom('takeLine')
    .innerJoin('exercise', 'exercise.id', 'takeLine.exerciseId')
    .select(['takeLine.takeId', 'exercise.label', 'takeLine.bpm as asked', 'takeLine.bpmPlayed as played'])
    .where('takeLine.takeId', 'in', ids)
    .orderBy('takeLine.takeId')
    .orderBy('takeLine.place')
    .execute();
  const tags = await db
    .selectFrom('takeTag')
    .select(['takeId', 'tag'])
    .where('takeId', 'in', ids)
    .orderBy('tag')
    .execute();
  const byId = new Map(rows.map((row) => [row.id, row]));
  return ids.flatMap((id) => {
    const row = byId.get(id);
    if (row === undefined) return [];
    const { endGaveWay: _, ...shown } = row;
    const own = sheetLines.filter(({ takeId }) => takeId === id);
    return {
      ...shown,
      graded: row.graded === 1,
      remarks: row.remarks ?? 0,
      dimensions: keptJson<DimensionScore[]>(row.dimensions),
      lines: own.map(({ label }) => label),
      tempos: own.map(({ asked, played }) => ({ asked, played })),
      tags: tags.filter(({ takeId }) => takeId === id).map(({ tag }) => tag),
    };
  });
}
