import { randomUUID } from 'node:crypto';
import { createReadStream, existsSync } from 'node:fs';
import { mkdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { audioFile, folderAudioStore } from '../folder-audio-store.ts';
import type { LibraryDb } from '../library.ts';
import { LibraryFault } from '../library-fault.ts';
import { libraryFaultOf } from '../library-fault-of.ts';
import type { FolderLibrary } from '../open-folder-library.ts';
import { type KeptRecording, openKeptTables, putTables, snapshotTables } from './kept-tables.ts';
import { clearLeftOvers, expectApart, expectBackupPlace, tablesName } from './places.ts';
import { storeRecording } from './store-recording.ts';

interface BackedUp {
  readonly takes: number;
  readonly recordings: number;
  /** Recordings that weren't in the backup yet, and their bytes. */
  readonly copied: number;
  readonly copiedBytes: number;
  /** Recordings that went from the backup because the library has them no longer. */
  readonly cleared: number;
  /** Recordings that the library itself lacks or holds damaged: the backup has them as little. */
  readonly lacking: readonly KeptRecording[];
}

/**
 * Makes a folder hold what the library holds now: a library itself, whose tables are those of one moment, with every
 * recording they name. What an earlier backup there has is not copied again. The library may be in use meanwhile;
 * stopped at any moment, the folder holds the earlier backup or this one. Throws `LibraryFault`.
 *
 * @example await backUpLibrary(library, '/media/disk/takes') // { takes: 214, recordings: 198, copied: 6, … }
 */
export async function backUpLibrary(library: FolderLibrary, to: string): Promise<BackedUp> {
  expectApart(library.folder, to);
  await expectBackupPlace(to);
  const snapshot = join(to, `.${randomUUID()}.arriving`);
  try {
    await mkdir(to, { recursive: true });
    await clearLeftOvers(to);
    for (let attempt = 1; ; attempt++) {
      await rm(snapshot, { force: true });
      await snapshotTables(library, snapshot);
      const { takes, recordings } = await contentsOf(snapshot, {
        // A sound result in the earlier backup must not give way to a damaged one.
        whole: existsSync(join(to, tablesName)) ? library.folder : null,
      });
      const copied = await copyRecordings(recordings, library.folder, to);
      // Takes that were deleted since the snapshot took their recordings with them.
      if (attempt < 5 && !(await areStillKept(library.db, copied.lacking))) continue;
      await putTables(snapshot, join(to, tablesName));
      const cleared = await clearOthers(to, recordings);
      return { takes, recordings: recordings.length, ...copied, cleared };
    }
  } catch (error) {
    throw libraryFaultOf(error, to);
  } finally {
    await rm(snapshot, { force: true });
  }
}

async function contentsOf(path: string, { whole }: { readonly whole: string | null }) {
  const tables = await openKeptTables(path);
  try {
    const damaged = whole === null ? null : tables.damagedResult();
    if (damaged !== null)
      throw new LibraryFault('library-damaged', {
        path: whole!,
        reason: `the result of take ${damaged.slice(0, 8)} can't be read`,
      });
    return tables;
  } finally {
    tables.close();
  }
}

async function copyRecordings(recordings: readonly KeptRecording[], from: string, to: string) {
  let copied = 0;
  let copiedBytes = 0;
  const lacking: KeptRecording[] = [];
  for (const recording of recordings) {
    const { hash, bytes } = recording;
    if (await isThere(audioFile(to, hash), bytes)) continue;
    const source = audioFile(from, hash);
    const whole =
      (await isThere(source, bytes)) && (await storeRecording(createReadStream(source), to, hash));
    if (!whole) lacking.push(recording);
    else {
      copied++;
      copiedBytes += bytes;
    }
  }
  return { copied, copiedBytes, lacking };
}

/** Whether a file of this length stands at a path. */
export async function isThere(path: string, bytes: number): Promise<boolean> {
  const status = await stat(path).catch(() => undefined);
  return status?.isFile() === true && status.size === bytes;
}

/** Whether the library still names recordings that couldn't be copied, so that another attempt would find no more. */
export async function areStillKept(db: LibraryDb, lacking: readonly KeptRecording[]): Promise<boolean> {
  const kept = new Set((await db.selectFrom('audio').select('hash').execute()).map(({ hash }) => hash));
  return lacking.every(({ hash }) => kept.has(hash));
}

async function clearOthers(folder: string, recordings: readonly KeptRecording[]): Promise<number> {
  const store = folderAudioStore(join(folder, 'audio'));
  const wanted = new Set(recordings.map(({ hash }) => hash));
  const others = (await store.list()).filter((hash) => !wanted.has(hash));
  for (const hash of others) await store.delete(hash);
  return others.length;
}
