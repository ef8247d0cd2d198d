import { createReadStream } from 'node:fs';
import { audioFile } from '../folder-audio-store.ts';
import type { FolderLibrary } from '../open-folder-library.ts';
import type { LibrarySource } from './library-source.ts';
import { hashOfFile, storeRecording } from './store-recording.ts';

/**
 * Brings recordings that a library lacks or holds damaged back from a backup, each held against its hash; everything
 * else stays. Returns how many came back.
 *
 * @example await bringBackRecordings(library, backupSource('/media/disk/takes')) // 2
 */
export async function bringBackRecordings(
  { db, folder }: FolderLibrary,
  source: LibrarySource,
): Promise<number> {
  const kept = await db.selectFrom('audio').select(['hash', 'bytes', 'name']).execute();
  let back = 0;
  for (const recording of kept) {
    const { hash } = recording;
    if ((await hashOfFile(createReadStream(audioFile(folder, hash)))) === hash) continue;
    const blocks = await source.recording(recording);
    if (blocks !== null && (await storeRecording(blocks, folder, hash))) back++;
  }
  return back;
}
