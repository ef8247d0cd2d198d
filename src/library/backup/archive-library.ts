import { createHash, randomUUID } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { type FileHandle, open, rename, rm } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { audioFile } from '../folder-audio-store.ts';
import { LibraryFault } from '../library-fault.ts';
import { libraryFaultOf } from '../library-fault-of.ts';
import type { FolderLibrary } from '../open-folder-library.ts';
import { programVersion } from '../program-version.ts';
import { syncFolder } from '../written-for-good.ts';
import { areStillKept, isThere } from './back-up-library.ts';
import { type KeptRecording, openKeptTables, snapshotTables } from './kept-tables.ts';
import { tablesName } from './places.ts';
import { hashOfFile } from './store-recording.ts';
import { tarEnd, tarHeader, tarPadding } from './tar-archive.ts';

/** Version 1 had no hash of the tables. */
export const archiveFormat = { format: 'evenhand-library', version: 2 } as const;

interface Archived {
  readonly takes: number;
  readonly recordings: number;
  readonly bytes: number;
  /** Recordings that the library lacks or holds damaged. */
  readonly lacking: readonly KeptRecording[];
}

/**
 * Writes a whole library as one archive (tar, POSIX.1-1988), block by block, while it may be in use: `library.json`
 * with the SHA-256 of the tables, the tables as of one moment, and every recording they name. At `to` stands what was
 * there before or the whole archive. Throws `LibraryFault` or the system's fault.
 *
 * @example await archiveLibrary(library, 'everything.library.tar')
 */
export async function archiveLibrary(library: FolderLibrary, to: string): Promise<Archived> {
  const folder = dirname(resolve(to));
  const [snapshot, temporary] = [0, 1].map(() => join(folder, `.${randomUUID()}.arriving`)) as [
    string,
    string,
  ];
  try {
    for (let attempt = 1; ; attempt++) {
      await rm(snapshot, { force: true });
      await snapshotTables(library, snapshot);
      const written = await writeArchive(library.folder, snapshot, temporary);
      if (attempt < 5 && !(await areStillKept(library.db, written.lacking))) continue;
      await rename(temporary, to);
      await syncFolder(folder);
      return written;
    }
  } catch (error) {
    throw libraryFaultOf(error, folder);
  } finally {
    await rm(snapshot, { force: true });
    await rm(temporary, { force: true });
  }
}

async function writeArchive(libraryFolder: string, snapshot: string, to: string): Promise<Archived> {
  const tables = await openKeptTables(snapshot);
  tables.close();
  const { takes, recordings } = tables;
  const file = await open(to, 'w');
  const lacking: KeptRecording[] = [];
  try {
    const tablesSha256 = await hashOfFile(createReadStream(snapshot));
    const about = Buffer.from(
      `${JSON.stringify({ ...archiveFormat, takes, tablesSha256, writtenBy: programVersion }, null, 2)}\n`,
    );
    await add(file, 'library.json', about.length, one(about));
    const written = await add(file, tablesName, await sizeOf(snapshot), createReadStream(snapshot));
    if (written !== tablesSha256)
      throw new LibraryFault('library-failed', { reason: `${tablesName} changed while it was read` });
    for (const recording of recordings) {
      const { hash, bytes } = recording;
      const path = audioFile(libraryFolder, hash);
      const found = (await isThere(path, bytes))
        ? await add(file, archivedName(hash), bytes, createReadStream(path))
        : null;
      if (found !== hash) lacking.push(recording);
    }
    await file.writeFile(tarEnd());
    await file.sync();
    return {
      takes,
      recordings: recordings.length - lacking.length,
      bytes: (await file.stat()).size,
      lacking,
    };
  } finally {
    await file.close();
  }
}

/** A recording's name in an archive. */
export const archivedName = (hash: string): string => `audio/${hash}`;

async function* one(bytes: Uint8Array) {
  yield bytes;
}

async function sizeOf(path: string): Promise<number> {
  const file = await open(path);
  try {
    return (await file.stat()).size;
  } finally {
    await file.close();
  }
}

/** Adds a file and gives the SHA-256 of what was written. */
async function add(
  file: FileHandle,
  name: string,
  size: number,
  blocks: AsyncIterable<Uint8Array>,
): Promise<string> {
  const hasher = createHash('sha256');
  let length = 0;
  await file.writeFile(tarHeader(name, size, 0));
  for await (const block of blocks) {
    hasher.update(block);
    length += block.length;
    await file.writeFile(block);
  }
  if (length !== size)
    throw new LibraryFault('library-failed', { reason: `${name} changed while it was read` });
  await file.writeFile(tarPadding(size));
  return hasher.digest('hex');
}
