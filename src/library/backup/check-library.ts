import { createReadStream } from 'node:fs';
import { CompiledQuery } from 'kysely';
import { parseSheet } from '../../core/exercise/parse-sheet.ts';
import { audioFile } from '../folder-audio-store.ts';
import type { LibraryDb } from '../library.ts';
import { LibraryFault } from '../library-fault.ts';
import { listedTakes } from '../listed-takes.ts';
import type { FolderLibrary } from '../open-folder-library.ts';
import { unpackResult } from '../stored-result.ts';
import type { LibraryFinding } from './library-finding.ts';
import { hashOfFile } from './store-recording.ts';

/** Signs of a take's id as lists show them. */
const shortId = 8;
const atOnce = 200;

/**
 * Looks at everything a library holds, and changes nothing: SQLite's own checks of its tables, every recording against
 * its hash, recordings that nothing uses, every result and sheet. Findings come as they are made; one take and one
 * block of a recording are held at a time.
 *
 * @example for await (const finding of checkLibrary(library)) console.log(libraryFindingSentence(finding));
 */
export async function* checkLibrary(library: FolderLibrary): AsyncGenerator<LibraryFinding, void> {
  const { db } = library;
  for (const part of [checkTables(db), checkRecordings(library), checkTakes(db)]) yield* orDamaged(part);
}

/** A part that meets a damaged page ends there, with that for a finding; the others go on. */
async function* orDamaged(part: AsyncGenerator<LibraryFinding>): AsyncGenerator<LibraryFinding> {
  try {
    yield* part;
  } catch (error) {
    if (!(error instanceof LibraryFault) || error.code !== 'library-damaged') throw error;
    yield { code: 'tables-damaged', facts: { reason: String(error.facts.reason) } };
  }
}

async function* checkTables(db: LibraryDb): AsyncGenerator<LibraryFinding> {
  for (const row of await rowsOf(db, 'pragma integrity_check(20)')) {
    const reason = String(Object.values(row)[0]);
    if (reason !== 'ok') yield { code: 'tables-damaged', facts: { reason } };
  }
  for (const row of await rowsOf(db, 'pragma foreign_key_check')) {
    const { table, parent } = row as { table: string; parent: string };
    yield { code: 'rows-unconnected', facts: { reason: `${table} → ${parent}` } };
  }
}

async function rowsOf(db: LibraryDb, statement: string): Promise<readonly object[]> {
  return (await db.executeQuery(CompiledQuery.raw(statement))).rows as object[];
}

async function* checkRecordings({ db, audio, folder }: FolderLibrary): AsyncGenerator<LibraryFinding> {
  const kept = await db
    .selectFrom('audio')
    .select(['hash', 'name'])
    .select(({ selectFrom }) =>
      selectFrom('take')
        .select(({ fn }) => fn.countAll<number>().as('takes'))
        .whereRef('take.audioHash', '=', 'audio.hash')
        .$asScalar()
        .$notNull()
        .as('takes'),
    )
    .orderBy('hash')
    .execute();
  for (const facts of kept) {
    const hash = await hashOfFile(createReadStream(audioFile(folder, facts.hash)));
    if (hash === null) yield { code: 'recording-missing', facts };
    else if (hash !== facts.hash) yield { code: 'recording-damaged', facts };
  }
  const known = new Set(kept.map(({ hash }) => hash));
  const count = (await audio.list()).filter((hash) => !known.has(hash)).length;
  if (count > 0) yield { code: 'recordings-unused', facts: { count } };
}

async function* checkTakes(db: LibraryDb): AsyncGenerator<LibraryFinding> {
  let after = '';
  for (;;) {
    const ids = await db
      .selectFrom('take')
      .select(['id', 'sheetId'])
      .where('id', '>', after)
      .orderBy('id')
      .limit(atOnce)
      .execute();
    await listedTakes(
      db,
      ids.map(({ id }) => id),
    );
    for (const { id, sheetId } of ids) yield* checkTake(db, id, sheetId);
    if (ids.length < atOnce) return;
    after = ids.at(-1)!.id;
  }
}

async function* checkTake(db: LibraryDb, id: string, sheetId: string): AsyncGenerator<LibraryFinding> {
  const take = id.slice(0, shortId);
  const kept = await db.selectFrom('takeResult').select('json').where('takeId', '=', id).executeTakeFirst();
  try {
    if (kept === undefined) throw new LibraryFault('result-unreadable', { reason: 'it is missing' });
    unpackResult(kept.json);
  } catch (error) {
    const { code, facts } = error as LibraryFault;
    if (code !== 'result-unreadable' && code !== 'result-is-newer') throw error;
    yield { code, facts: { take, reason: String(facts.reason ?? '') } };
  }
  const sheet = await db.selectFrom('sheet').select('text').where('id', '=', sheetId).executeTakeFirst();
  const parsed = parseSheet(sheet?.text ?? '');
  if (!parsed.ok) yield { code: 'sheet-unreadable', facts: { take, reason: parsed.faults[0]?.code ?? '' } };
}
