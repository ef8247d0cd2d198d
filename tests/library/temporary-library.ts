import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type FolderLibrary, openFolderLibrary } from '../../src/library/open-folder-library.ts';

/** Runs a check on a new library in a folder of its own, which is deleted afterwards. */
export async function withLibrary(check: (library: FolderLibrary) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'evenhand-library-'));
  const library = await openFolderLibrary(folder);
  try {
    await check(library);
  } finally {
    await library.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
