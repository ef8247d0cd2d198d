import { join } from 'node:path';
import { checkLibrary } from '../../src/library/backup/check-library.ts';
import type { LibraryFinding } from '../../src/library/backup/library-finding.ts';
import { keepTake } from '../../src/library/keep-take.ts';
import { openFolderLibrary } from '../../src/library/open-folder-library.ts';
import { everything, fill, opened } from '../library/backup/filled-library.ts';
import { madeAudio, madeTake } from '../library/made-take.ts';

/** A library with three takes and something in every table, each recording of `bytes`. */
export async function filledLibrary(folder: string, name = 'library', bytes = 1000): Promise<string> {
  const place = join(folder, name);
  await opened(place, async (library) => {
    await fill(library);
    if (bytes > 1000)
      await keepTake(library, madeTake(90, { audio: { name: 'long.wav', bytes: madeAudio(90, bytes) } }));
  });
  return place;
}

export const contents = (folder: string) => opened(folder, everything);

/** What a check of the library finds wrong. */
export async function findings(folder: string): Promise<readonly LibraryFinding['code'][]> {
  const library = await openFolderLibrary(folder);
  const found: LibraryFinding['code'][] = [];
  try {
    for await (const { code } of checkLibrary(library)) found.push(code);
  } finally {
    await library.close();
  }
  return found;
}

/** One sentence or two on one line, with a way out, and nothing of the machinery. */
export const plainSentence = /^(?!.*(Error:|SQLITE|node:|undefined|evenhand: ))["A-Z][^\n]{20,}\.\n$/;
