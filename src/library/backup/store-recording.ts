import { createHash, randomUUID } from 'node:crypto';
import { mkdir, open, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { audioFile } from '../folder-audio-store.ts';
import { libraryFaultOf } from '../library-fault-of.ts';
import { syncFolder } from '../written-for-good.ts';

/**
 * Writes a recording into a library's folder block by block, whole or not at all; false, and nothing written, where
 * its bytes aren't those that its hash names.
 */
export async function storeRecording(
  blocks: AsyncIterable<Uint8Array>,
  libraryFolder: string,
  hash: string,
): Promise<boolean> {
  const path = audioFile(libraryFolder, hash);
  const temporary = join(dirname(path), `.${randomUUID()}.arriving`);
  try {
    await mkdir(dirname(path), { recursive: true });
    if ((await writeHashed(blocks, temporary)) !== hash) return false;
    await rename(temporary, path);
    await syncFolder(dirname(path));
    return true;
  } catch (error) {
    throw libraryFaultOf(error, libraryFolder);
  } finally {
    await rm(temporary, { force: true });
  }
}

async function writeHashed(blocks: AsyncIterable<Uint8Array>, path: string): Promise<string> {
  const hasher = createHash('sha256');
  const file = await open(path, 'wx');
  try {
    for await (const block of blocks) {
      hasher.update(block);
      await file.writeFile(block);
    }
    await file.sync();
  } finally {
    await file.close();
  }
  return hasher.digest('hex');
}

/** SHA-256 of a file, block by block; null when it isn't there. */
export async function hashOfFile(blocks: AsyncIterable<Uint8Array>): Promise<string | null> {
  const hasher = createHash('sha256');
  try {
    for await (const block of blocks) hasher.update(block);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
  return hasher.digest('hex');
}
