import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serialize } from 'node:v8';
import { withArchive } from '../../src/library/backup/archive-source.ts';
import { restoreLibrary } from '../../src/library/backup/restore-library.ts';
import { LibraryFault } from '../../src/library/library-fault.ts';
import { readTakeFile } from '../../src/library/take-file/read-take-file.ts';
import * as good from './good-files.ts';
import type { Parser } from './parser.ts';

let goodArchive: Promise<Uint8Array> | undefined;
let goodTables: string | undefined;

/** The archive to damage, made once, with the tables that it holds. */
async function archive(): Promise<Uint8Array> {
  goodArchive ??= good.libraryArchive();
  return goodArchive;
}

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

async function tablesOf(bytes: Uint8Array): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'evenhand-good-'));
  const file = join(folder, 'all.library.tar');
  try {
    writeFileSync(file, bytes);
    return await withArchive(file, join(folder, 'place'), async ({ tables }) => sha256(readFileSync(tables)));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

let goodTakeFiles: Promise<readonly Uint8Array[]> | undefined;
let goodTakes: readonly string[] | undefined;

async function takeFiles(): Promise<readonly Uint8Array[]> {
  goodTakeFiles ??= Promise.all([good.takeFile(1), good.takeFile(3)]);
  return goodTakeFiles;
}

/** What is read whole must be the takes that were written: damage that nobody notices counts as a crash. */
async function takeFileHolds(bytes: Uint8Array): Promise<boolean> {
  const read = await readTakeFile(Uint8Array.from(bytes));
  if (!read.ok || read.faults.length > 0) return false;
  goodTakes ??= await Promise.all(
    (await takeFiles()).map(async (each) => sha256(serialize(await readTakeFile(Uint8Array.from(each))))),
  );
  if (!goodTakes.includes(sha256(serialize(read)))) throw new Error('damaged takes were taken in');
  return true;
}

/** What is taken in must be the tables that were written: damage that nobody notices counts as a crash. */
async function archiveHolds(bytes: Uint8Array): Promise<boolean> {
  const folder = mkdtempSync(join(tmpdir(), 'evenhand-arriving-'));
  const [file, place] = [join(folder, 'all.library.tar'), join(folder, 'place')];
  try {
    writeFileSync(file, bytes);
    let tables = '';
    const { takes } = await withArchive(file, place, (source) => {
      tables = sha256(readFileSync(source.tables));
      return restoreLibrary(source, place);
    });
    goodTables ??= await tablesOf(await archive());
    if (tables !== goodTables) throw new Error('damaged tables were taken in');
    return takes > 0;
  } catch (error) {
    if (error instanceof LibraryFault) return false;
    throw error;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Readers of files that hold other files: takes, and a library as a whole. */
export const archiveParsers: readonly Parser[] = [
  {
    name: 'take files',
    corpus: takeFiles,
    words: ['PK\u0003\u0004', 'PK\u0001\u0002', 'PK\u0005\u0006', 'manifest.json', '../', '\u0000'],
    read: takeFileHolds,
  },
  {
    name: 'library archives',
    corpus: async () => [await archive()],
    words: ['ustar', '\u0000', '00000000000', '77777777777', '../', 'SQLite format 3', 'create table'],
    read: archiveHolds,
  },
];
