import { existsSync, realpathSync } from 'node:fs';
import { readdir, rm, stat } from 'node:fs/promises';
import { dirname, join, resolve, sep } from 'node:path';
import { leftOverAfterMs } from '../folder-audio-store.ts';
import { LibraryFault } from '../library-fault.ts';

export const tablesName = 'takes.sqlite';

/** Throws `LibraryFault` where one of two folders is the other or lies in it. */
export function expectApart(libraryFolder: string, other: string): void {
  const [a, b] = [whole(libraryFolder), whole(other)].map((path) => path + sep);
  if (a!.startsWith(b!) || b!.startsWith(a!)) throw new LibraryFault('backup-overlaps', { path: other });
}

/** A path without links, as far as it exists. */
function whole(path: string): string {
  const full = resolve(path);
  if (existsSync(full)) return realpathSync(full);
  const above = dirname(full);
  return above === full ? full : join(whole(above), full.slice(above.length));
}

/** Throws `LibraryFault` for a folder that holds anything else than a backup. */
export async function expectBackupPlace(folder: string): Promise<void> {
  try {
    if (!existsSync(folder)) return;
    const names = (await readdir(folder)).filter((name) => !isArriving(name));
    // A first backup that was stopped has its recordings already.
    if (names.includes(tablesName) || names.every((name) => name === 'audio')) return;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOTDIR') throw error;
  }
  throw new LibraryFault('backup-place-taken', { path: folder });
}

const isArriving = (name: string): boolean => /^\.[0-9a-f-]{36}\.arriving(-journal|-wal|-shm)?$/.test(name);

/** Clears away what a program that was stopped left in a folder. */
export async function clearLeftOvers(folder: string): Promise<void> {
  for (const name of (await readdir(folder)).filter(isArriving)) {
    const path = join(folder, name);
    const status = await stat(path).catch(() => undefined);
    if (status !== undefined && Date.now() - status.mtimeMs > leftOverAfterMs)
      await rm(path, { force: true });
  }
}
