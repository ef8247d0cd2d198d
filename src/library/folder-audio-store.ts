import { randomUUID } from 'node:crypto';
import { constants, type Dirent } from 'node:fs';
import { access, mkdir, open, readdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { type AudioStore, isAudioHash } from './audio-store.ts';
import { libraryFaultOf } from './library-fault-of.ts';
import { syncFolder } from './written-for-good.ts';

const arriving = /^\.[0-9a-f-]{36}\.arriving$/;

/** An unfinished file of another program may be growing still; one this old is left over. */
export const leftOverAfterMs = 3_600_000;

/** Where a recording lies in a library's folder. */
export const audioFile = (libraryFolder: string, hash: string): string =>
  join(libraryFolder, 'audio', hash.slice(0, 2), hash);

/**
 * Recordings as files of a folder, named by their hash, in 256 folders by its first two characters. Each is written
 * under another name, brought to the disk and then renamed, so that a file with a hash for a name is whole.
 *
 * @example const store = folderAudioStore('library/audio')
 */
export function folderAudioStore(folder: string): AudioStore {
  const folderOf = (hash: string) => join(folder, hash.slice(0, 2));
  const pathOf = (hash: string) => {
    if (!isAudioHash(hash)) throw new RangeError(`"${hash}" is no SHA-256`);
    return join(folderOf(hash), hash);
  };
  const has = (hash: string) =>
    access(pathOf(hash), constants.R_OK).then(
      () => true,
      () => false,
    );
  return {
    has,
    async put(hash, bytes) {
      if (await has(hash)) return;
      const temporary = join(folderOf(hash), `.${randomUUID()}.arriving`);
      try {
        await mkdir(folderOf(hash), { recursive: true });
        await writeWhole(temporary, bytes);
        await rename(temporary, pathOf(hash));
        await syncFolder(folderOf(hash));
      } catch (error) {
        await rm(temporary, { force: true }).catch(() => {});
        throw libraryFaultOf(error, dirname(folder));
      }
    },
    get: (hash) =>
      readFile(pathOf(hash)).then(
        ({ buffer, byteOffset, byteLength }) => new Uint8Array(buffer, byteOffset, byteLength),
        (error) => {
          if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
          throw error;
        },
      ),
    async delete(hash) {
      await rm(pathOf(hash), { force: true });
    },
    async list() {
      const hashes: string[] = [];
      for (const entry of await entriesOf(folder)) {
        if (!entry.isDirectory() || !/^[0-9a-f]{2}$/.test(entry.name)) continue;
        for (const name of await readdir(join(folder, entry.name))) {
          if (isAudioHash(name)) hashes.push(name);
          else if (arriving.test(name)) await removeLeftOver(join(folder, entry.name, name));
        }
      }
      return hashes;
    },
  };
}

/** Nothing, where no recording was ever kept. */
async function entriesOf(folder: string): Promise<Dirent[]> {
  try {
    return await readdir(folder, { withFileTypes: true });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw error;
  }
}

async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  const file = await open(path, 'wx');
  try {
    await file.writeFile(bytes);
    await file.sync(); // the rename must not reach the disk before the contents
  } finally {
    await file.close();
  }
}

async function removeLeftOver(path: string): Promise<void> {
  const status = await stat(path).catch(() => undefined);
  if (status !== undefined && Date.now() - status.mtimeMs > leftOverAfterMs)
    await rm(path, { force: true }).catch(() => {}); // in a library that may only be read it stays
}
