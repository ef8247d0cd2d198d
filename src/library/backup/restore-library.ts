import { join } from 'node:path';
import { clearUnreferencedAudio, removeUnreferencedAudio } from '../delete-audio.ts';
import { audioFile } from '../folder-audio-store.ts';
import type { LibraryDb } from '../library.ts';
import { LibraryFault } from '../library-fault.ts';
import { openFolderLibrary } from '../open-folder-library.ts';
import { isThere } from './back-up-library.ts';
import { type KeptRecording, type KeptTables, openKeptTables } from './kept-tables.ts';
import type { LibrarySource } from './library-source.ts';
import { expectApart, tablesName } from './places.ts';
import { storeRecording } from './store-recording.ts';

export interface RestoreOptions {
  /** Put it in the place of what the library holds. */
  readonly replace?: boolean | undefined;
  /** Go on where the source lacks recordings. */
  readonly incomplete?: boolean | undefined;
}

export interface Restored {
  readonly takes: number;
  readonly recordings: number;
  readonly lacking: readonly KeptRecording[];
}

/**
 * Makes a folder's library hold what a backup or an archive holds, whole or not at all: recordings first, each held
 * against its hash, then all tables in one transaction. Stopped at any moment, the library is what it was or what the
 * source is. Throws `LibraryFault`.
 *
 * @example await restoreLibrary(backupSource('/media/disk/takes'), 'my-takes')
 */
export async function restoreLibrary(
  source: LibrarySource,
  folder: string,
  { replace = false, incomplete = false }: RestoreOptions = {},
): Promise<Restored> {
  expectApart(folder, source.path);
  const tables = await openKeptTables(source.tables);
  try {
    await inFolder(folder, async ({ db }) => {
      if (!replace) await expectEmpty(db, folder);
    });
    const stored: string[] = [];
    let lacking: readonly KeptRecording[];
    try {
      lacking = await bringRecordings(source, tables, folder, stored);
      if (lacking.length > 0 && !incomplete)
        throw new LibraryFault('backup-incomplete', { count: lacking.length, name: lacking[0]!.name });
      await tables.replace(join(folder, tablesName));
    } catch (error) {
      await inFolder(folder, (library) => removeUnreferencedAudio(library, stored));
      throw error;
    }
    await inFolder(folder, clearUnreferencedAudio);
    // Another program may have cleared away what no take named until just now.
    await bringRecordings(source, tables, folder, []);
    return { takes: tables.takes, recordings: tables.recordings.length - lacking.length, lacking };
  } finally {
    tables.close();
  }
}

async function inFolder<T>(
  folder: string,
  work: (library: Awaited<ReturnType<typeof openFolderLibrary>>) => Promise<T>,
): Promise<T> {
  const library = await openFolderLibrary(folder);
  try {
    return await work(library);
  } finally {
    await library.close();
  }
}

async function bringRecordings(
  source: LibrarySource,
  { recordings }: KeptTables,
  folder: string,
  stored: string[],
): Promise<readonly KeptRecording[]> {
  const lacking: KeptRecording[] = [];
  for (const recording of recordings) {
    const { hash, bytes } = recording;
    if (await isThere(audioFile(folder, hash), bytes)) continue;
    const blocks = await source.recording(recording);
    if (blocks === null || !(await storeRecording(blocks, folder, hash))) lacking.push(recording);
    else stored.push(hash);
  }
  return lacking;
}

async function expectEmpty(db: LibraryDb, folder: string): Promise<void> {
  const tables = ['take', 'person', 'setUp', 'assignment', 'practice', 'discomfort'] as const;
  const counts = new Map<string, number>();
  for (const table of tables) {
    const { rows } = await db
      .selectFrom(table)
      .select(({ fn }) => fn.countAll<number>().as('rows'))
      .executeTakeFirstOrThrow();
    counts.set(table, rows);
  }
  if ([...counts.values()].some((rows) => rows > 0))
    throw new LibraryFault('library-not-empty', { path: folder, takes: counts.get('take') ?? 0 });
}
