import { createReadStream, existsSync } from 'node:fs';
import { join } from 'node:path';
import { audioFile } from '../folder-audio-store.ts';
import { LibraryFault } from '../library-fault.ts';
import { isThere } from './back-up-library.ts';
import type { KeptRecording } from './kept-tables.ts';
import { tablesName } from './places.ts';

/** Where a whole library comes from: a backup's folder or an archive. */
export interface LibrarySource {
  readonly path: string;
  /** A file with its tables that can be opened in place. */
  readonly tables: string;
  /** A recording block by block, or null where it is missing or of another length. */
  recording(recording: KeptRecording): Promise<AsyncIterable<Uint8Array> | null>;
}

/** The folder that a backup was written to; throws `LibraryFault` where there is none. */
export function backupSource(folder: string): LibrarySource {
  const tables = join(folder, tablesName);
  if (!existsSync(tables)) throw new LibraryFault('no-backup-there', { path: folder });
  return {
    path: folder,
    tables,
    async recording({ hash, bytes }) {
      const path = audioFile(folder, hash);
      return (await isThere(path, bytes)) ? createReadStream(path) : null;
    },
  };
}
