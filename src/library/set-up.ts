import Type, { type Static } from 'typebox';
import Schema from 'typebox/schema';
import { checkDay } from './check-day.ts';
import { keptJson } from './kept-json.ts';
import type { LibraryDb } from './library.ts';
import { LibraryFault } from './library-fault.ts';
import { plainName } from './name-key.ts';

const name = Type.String({ maxLength: 1000 });
const hand = Type.Object({
  /** Mean level of the strokes, dBFS, and their standard deviation, dB. */
  levelDb: Type.Number(),
  spreadDb: Type.Number({ minimum: 0 }),
  strokes: Type.Integer({ minimum: 1 }),
});

/**
 * A same-set-up reference: a few strokes a hand at one height, played before the takes. Only takes whose references
 * agree have levels that can be compared.
 */
export const setUpSchema = Type.Object({
  id: Type.String({ minLength: 1, maxLength: 100 }),
  recordedAt: Type.Integer(),
  day: Type.String({ pattern: '^\\d{4}-\\d{2}-\\d{2}$' }),
  pad: name,
  sticks: name,
  device: name,
  levels: Type.Object({ right: hand, left: hand, noiseFloorDb: Type.Union([Type.Number(), Type.Null()]) }),
});

export type SetUp = Static<typeof setUpSchema> & { readonly personId: string | null };

/** Keeps a same-set-up reference; one of this id that is there already stays as it is. */
export async function keepSetUp(db: LibraryDb, { personId, ...setUp }: SetUp): Promise<void> {
  if (!Schema.Check(setUpSchema, setUp))
    throw new LibraryFault('value-out-of-range', {
      what: 'Same-set-up strokes',
      value: JSON.stringify(setUp).slice(0, 80),
      expected: 'Levels of both hands are wanted.',
    });
  checkDay('Day of the same-set-up strokes', setUp.day);
  const { id, recordedAt, day, levels } = setUp;
  await db
    .insertInto('setUp')
    .values({
      id,
      personId,
      recordedAt,
      day,
      pad: plainName(setUp.pad),
      sticks: plainName(setUp.sticks),
      device: plainName(setUp.device),
      levels: JSON.stringify(levels),
    })
    .onConflict((conflict) => conflict.doNothing())
    .execute();
}

/** A player's same-set-up references, newest first. */
export async function listSetUps(
  db: LibraryDb,
  { personId, limit = 50 }: { readonly personId: string | null; readonly limit?: number },
): Promise<readonly SetUp[]> {
  const rows = await db
    .selectFrom('setUp')
    .selectAll()
    .where('personId', 'is', personId)
    .orderBy('recordedAt', 'desc')
    .limit(limit)
    .execute();
  return rows.map((row) => ({ ...row, levels: keptJson(row.levels) }));
}

/** One reference, or null when it isn't there. */
export async function readSetUp(db: LibraryDb, id: string): Promise<SetUp | null> {
  const row = await db.selectFrom('setUp').selectAll().where('id', '=', id).executeTakeFirst();
  return row === undefined ? null : { ...row, levels: keptJson(row.levels) };
}
