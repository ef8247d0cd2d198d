import { type AudioStore, isAudioHash } from '../../library/audio-store.ts';
import { LibraryFault } from '../../library/library-fault.ts';

/** A file handle that can be renamed: not in TypeScript's types, nor in every browser. */
type Movable = FileSystemFileHandle & { move?(name: string): Promise<void> };
type Folder = FileSystemDirectoryHandle & { keys(): AsyncIterableIterator<string> };

const arriving = '.arriving';

/**
 * Recordings in the browser's private files, named by their hash. Each is written under another name and renamed when
 * it is whole; where a browser can't rename, through a swap file that takes the file's place when it is closed.
 * Only for a worker.
 */
export async function opfsAudioStore(name = 'evenhand-audio'): Promise<AudioStore> {
  const root = await navigator.storage.getDirectory();
  const folder = (await root.getDirectoryHandle(name, { create: true })) as Folder;
  const fileOf = (hash: string) =>
    folder.getFileHandle(hash).catch((error: DOMException) => {
      if (error.name === 'NotFoundError') return null;
      throw error;
    });
  const remove = (file: string) =>
    folder.removeEntry(file).catch((error: DOMException) => {
      if (error.name !== 'NotFoundError') throw error;
    });
  return {
    has: async (hash) => (await fileOf(hash)) !== null,
    async put(hash, bytes) {
      if ((await fileOf(hash)) !== null) return;
      const temporary = `${crypto.randomUUID()}${arriving}`;
      try {
        const file: Movable = await folder.getFileHandle(temporary, { create: true });
        if (file.move === undefined) await swapIn(folder, hash, bytes);
        else {
          await writeWhole(file, bytes);
          await file.move(hash);
        }
      } catch (error) {
        throw (error as DOMException).name === 'QuotaExceededError' ? new LibraryFault('no-room') : error;
      } finally {
        await remove(temporary);
      }
    },
    async get(hash) {
      const file = await (await fileOf(hash))?.getFile();
      return file === undefined ? null : new Uint8Array(await file.arrayBuffer());
    },
    delete: remove,
    async list() {
      const names: string[] = [];
      for await (const file of folder.keys()) names.push(file);
      // Nothing else writes here while this store is in use: the library has one user at a time.
      for (const file of names) if (file.endsWith(arriving)) await remove(file);
      return names.filter(isAudioHash);
    },
  };
}

async function writeWhole(file: FileSystemFileHandle, bytes: Uint8Array): Promise<void> {
  const handle = await file.createSyncAccessHandle();
  try {
    handle.truncate(0);
    const written = handle.write(bytes as Uint8Array<ArrayBuffer>, { at: 0 });
    if (written !== bytes.length) throw new LibraryFault('no-room');
    handle.flush();
  } finally {
    handle.close();
  }
}

async function swapIn(folder: Folder, hash: string, bytes: Uint8Array): Promise<void> {
  const file = await folder.getFileHandle(hash, { create: true });
  const writable = await file.createWritable();
  await writable.write(bytes as Uint8Array<ArrayBuffer>);
  await writable.close();
}
