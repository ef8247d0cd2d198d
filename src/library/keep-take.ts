import type { TakeResult } from '../core/result/take-result.ts';
import { checkDay } from './check-day.ts';
import { sheetId, takeId } from './content-ids.ts';
import { removeUnreferencedAudio } from './delete-audio.ts';
import type { Library, LibraryDb } from './library.ts';
import { LibraryFault } from './library-fault.ts';
import { nameKey } from './name-key.ts';
import type { NewTake } from './new-take.ts';
import { sha256Hex } from './sha256-hex.ts';
import { readResult } from './stored-result.ts';
import { exerciseRows, lineRows, plainTags, resultRow, takeRow } from './take-rows.ts';

export interface KeptTake {
  readonly id: string;
  /** `already-there`: the same recording held against the same sheet is kept; nothing was changed. */
  readonly outcome: 'kept' | 'already-there';
}

/** What else happens in the transaction that keeps a take. */
interface KeepingToo {
  /** Before a take that isn't there is kept; what it gives replaces what the take says. */
  readonly before?: (db: LibraryDb) => Promise<Pick<NewTake, 'personId' | 'setUpId'>>;
  /** Once the take is there, whether it was before or not. */
  readonly after?: (db: LibraryDb, id: string) => Promise<void>;
}

/**
 * Keeps a take whole or not at all: the recording first, then everything else in one transaction. What a crash in
 * between leaves behind is a recording that nothing names, which the next clearing takes away. Throws `LibraryFault`
 * for a result that isn't one, a recording that the result wasn't made from, or a player who isn't there.
 *
 * @example await keepTake(library, { result, sheetText, audio, recordedAt, day, keptAt, personId: null })
 * // { id: '3f0a…', outcome: 'kept' }
 */
export async function keepTake(
  library: Library,
  take: NewTake,
  { before, after }: KeepingToo = {},
): Promise<KeptTake> {
  const { db, audio: store } = library;
  const result = readResult(take.result);
  checkMoment(take);
  const hash = take.audio === null ? null : await sha256Hex(take.audio.bytes);
  const claimed = result.recording.sha256;
  if (hash !== null && claimed !== null && claimed !== hash) throw new LibraryFault('audio-of-another-take');

  const { sheetText, part = null } = take;
  const recording = hash ?? claimed ?? (await sha256Hex(JSON.stringify(result)));
  const id = await takeId({ recording, sheetText, part });
  const sheet = await sheetId(sheetText);
  if (hash !== null) await store.put(hash, take.audio!.bytes);
  try {
    const outcome = await db.transaction().execute(async (transaction) => {
      if (await isKept(transaction, id)) {
        await after?.(transaction, id);
        return 'already-there';
      }
      // A deletion elsewhere may have cleared the recording away since; it can't while this transaction writes.
      if (hash !== null && !(await store.has(hash))) await store.put(hash, take.audio!.bytes);
      const known = await before?.(transaction);
      await insertTake(transaction, { id, sheet, hash, take: { ...take, ...known, result } });
      await after?.(transaction, id);
      return 'kept';
    });
    return { id, outcome };
  } catch (error) {
    if (hash !== null) await removeUnreferencedAudio(library, [hash]).catch(() => {});
    throw error;
  }
}

/** Whether a take of this id is kept. */
async function isKept(db: LibraryDb, id: string): Promise<boolean> {
  const found = await db.selectFrom('take').select('id').where('id', '=', id).executeTakeFirst();
  return found !== undefined;
}

async function insertTake(
  db: LibraryDb,
  { id, sheet, hash, take }: { id: string; sheet: string; hash: string | null; take: NewTake },
): Promise<void> {
  const { result, personId, audio } = take;
  if (personId !== null) {
    const person = await db.selectFrom('person').select('id').where('id', '=', personId).executeTakeFirst();
    if (person === undefined) throw new LibraryFault('no-such-person');
  }
  await insertSheet(db, sheet, take.sheetText, result);
  await db
    .insertInto('exercise')
    .values(exerciseRows(result))
    .onConflict((conflict) => conflict.doNothing())
    .execute();
  if (hash !== null && audio !== null) {
    await db
      .insertInto('audio')
      .values({ hash, bytes: audio.bytes.length, name: audio.name })
      .onConflict((conflict) => conflict.doNothing())
      .execute();
  }
  const row = takeRow(id, sheet, hash, { ...take, setUpId: await knownSetUp(db, take.setUpId ?? null) });
  await db.insertInto('take').values(row).execute();
  await db
    .insertInto('takeResult')
    .values(resultRow(id, result, take.recordingFacts ?? {}))
    .execute();
  await db.insertInto('takeLine').values(lineRows(row, result)).execute();
  const tags = plainTags(take.tags ?? []).map((tag) => ({ takeId: id, tag, recordedAt: row.recordedAt }));
  if (tags.length > 0) await db.insertInto('takeTag').values(tags).execute();
}

/** Same-set-up strokes that were deleted meanwhile are no reason to lose a take. */
async function knownSetUp(db: LibraryDb, id: string | null): Promise<string | null> {
  if (id === null) return null;
  const found = await db.selectFrom('setUp').select('id').where('id', '=', id).executeTakeFirst();
  return found?.id ?? null;
}

async function insertSheet(db: LibraryDb, id: string, text: string, { sheet }: TakeResult): Promise<void> {
  await db
    .insertInto('sheet')
    .values({ id, title: sheet.title, titleKey: nameKey(sheet.title), text, lines: sheet.lines.length })
    .onConflict((conflict) => conflict.doNothing())
    .execute();
}

function checkMoment({ recordedAt, day }: NewTake): void {
  if (!Number.isSafeInteger(recordedAt))
    throw new LibraryFault('value-out-of-range', {
      what: 'Time of the take',
      value: recordedAt,
      expected: 'A moment in milliseconds since 1970 is wanted.',
    });
  checkDay('Day of the take', day);
}
