import { randomUUID } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, open, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { LibraryFault } from '../library-fault.ts';
import { libraryFaultOf } from '../library-fault-of.ts';
import { archivedName, archiveFormat } from './archive-library.ts';
import type { LibrarySource } from './library-source.ts';
import { clearLeftOvers, tablesName } from './places.ts';
import { hashOfFile } from './store-recording.ts';
import { type TarEntry, tarEntries } from './tar-archive.ts';

/** `library.json` is a few lines. */
const mostAboutBytes = 65_536;

/**
 * Does something with an archive as the source of a library; its tables lie in `folder` meanwhile. Throws
 * `LibraryFault` for what is no archive of a library.
 */
export async function withArchive<T>(
  path: string,
  folder: string,
  work: (source: LibrarySource) => Promise<T>,
): Promise<T> {
  const { entries, tablesSha256 } = await readContents(path);
  const tables = join(folder, `.${randomUUID()}.arriving`);
  try {
    await mkdir(folder, { recursive: true });
    await clearLeftOvers(folder);
    await writeFile(tables, blocksOf(path, entries.get(tablesName)!), { flag: 'wx' });
    if (tablesSha256 !== null && (await hashOfFile(createReadStream(tables))) !== tablesSha256)
      throw unreadable(path, 'its tables are not those that were written into it');
    return await work({
      path,
      tables,
      async recording({ hash, bytes }) {
        const entry = entries.get(archivedName(hash));
        return entry?.size === bytes ? blocksOf(path, entry) : null;
      },
    });
  } catch (error) {
    throw libraryFaultOf(error, folder);
  } finally {
    await rm(tables, { force: true });
  }
}

interface Contents {
  readonly entries: ReadonlyMap<string, TarEntry>;
  /** Null in archives of version 1, which said none. */
  readonly tablesSha256: string | null;
}

const unreadable = (path: string, reason: string) => new LibraryFault('archive-unreadable', { path, reason });

async function readContents(path: string): Promise<Contents> {
  try {
    const file = await open(path);
    try {
      const entries = await tarEntries(file);
      const about = entries.get('library.json');
      if (about === undefined || about.size > mostAboutBytes || !entries.has(tablesName))
        throw new Error('it holds no library');
      const text = Buffer.alloc(about.size);
      await file.read(text, 0, about.size, about.from);
      const { format, version, tablesSha256 } = JSON.parse(text.toString()) as Record<string, unknown>;
      if (format !== archiveFormat.format || typeof version !== 'number')
        throw new Error('it holds no library');
      if (version > archiveFormat.version)
        throw new LibraryFault('library-is-newer', { version, known: archiveFormat.version });
      if (typeof tablesSha256 === 'string') return { entries, tablesSha256 };
      if (version > 1) throw new Error('it does not say what its tables are');
      return { entries, tablesSha256: null };
    } finally {
      await file.close();
    }
  } catch (error) {
    if (error instanceof LibraryFault) throw error;
    throw unreadable(path, (error as Error).message);
  }
}

/** A file's bytes, block by block. */
function blocksOf(path: string, { from, size }: TarEntry) {
  // A stream's end is the last byte that it gives, so one of no bytes can't be asked for.
  return size === 0 ? Readable.from([]) : createReadStream(path, { start: from, end: from + size - 1 });
}
