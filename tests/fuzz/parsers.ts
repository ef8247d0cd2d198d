import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serialize } from 'node:v8';
import { layOut } from '../../src/core/exercise/lay-out.ts';
import { parseNotation } from '../../src/core/exercise/parse-notation.ts';
import { parseSheet } from '../../src/core/exercise/parse-sheet.ts';
import { writeSheet } from '../../src/core/exercise/write-sheet.ts';
import { parseJson } from '../../src/core/result/parse-json.ts';
import { NewerTakeResult, upgradeTakeResult } from '../../src/core/result/upgrade-take-result.ts';
import { InvalidTakeResult } from '../../src/core/result/validate-take-result.ts';
import { InvalidRubric, readRubric } from '../../src/core/scoring/read-rubric.ts';
import { midiNotes } from '../../src/formats/midi-notes.ts';
import { readSheetFile } from '../../src/formats/read-sheet-file.ts';
import { withArchive } from '../../src/library/backup/archive-source.ts';
import { restoreLibrary } from '../../src/library/backup/restore-library.ts';
import { unpackMessage } from '../../src/library/call-message.ts';
import { LibraryFault } from '../../src/library/library-fault.ts';
import { readTakeFile } from '../../src/library/take-file/read-take-file.ts';
import { decodeTake } from '../../src/page/recording/kept/chunk-file.ts';
import * as good from './good-files.ts';

/** Something that reads files from outside: good ones to damage, and what it makes of any bytes, thrown errors apart. */
export interface Parser {
  readonly name: string;
  readonly corpus: () => Promise<readonly Uint8Array[]>;
  /** Pieces that mean something to it. */
  readonly words: readonly string[];
  /** Whether it could use the file; throws only what it must not throw. */
  readonly read: (bytes: Uint8Array) => boolean | Promise<boolean>;
}

/** A sheet that was read lays out, and is the same after writing and reading. */
function sheetHolds(bytes: Uint8Array): boolean {
  const read = readSheetFile(bytes);
  if (!read.ok) {
    if (read.faults.length === 0 || read.faults.some((fault) => fault.length > 2000))
      throw new Error('no sentence, or one past reading');
    return false;
  }
  const again = parseSheet(writeSheet(read.sheet));
  if (!again.ok) throw new Error(`written sheet can't be read: ${JSON.stringify(again.faults)}`);
  if (layOut(again.sheet).length !== layOut(read.sheet).length) throw new Error('slots changed');
  return true;
}

/** Whether JSON can be used: `read` may refuse it with one of its own faults. */
function jsonHolds(
  read: (value: unknown) => unknown,
  faults: readonly (abstract new (...a: never[]) => Error)[],
) {
  return (bytes: Uint8Array): boolean => {
    try {
      read(parseJson(good.textOf(bytes)));
      return true;
    } catch (error) {
      if (error instanceof SyntaxError || faults.some((fault) => error instanceof fault)) return false;
      throw error;
    }
  };
}

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

function messageHolds(bytes: Uint8Array): boolean {
  try {
    unpackMessage(bytes);
    return true;
  } catch (error) {
    // What the server answers with "can't be read".
    if (error instanceof RangeError || error instanceof SyntaxError || error instanceof TypeError)
      return false;
    throw error;
  }
}

/** Every parser of files from outside but those of sound. */
export const parsers: readonly Parser[] = [
  {
    name: 'notation',
    corpus: async () => good.notations.map(good.utf8),
    words: ['>', 'z', '|', '-', 'R', 'l', '||', '(', ';', '\u2028', '🥁'],
    read: (bytes) => parseNotation(good.textOf(bytes)).ok,
  },
  {
    name: 'sheets',
    corpus: async () => good.sheets().map(good.utf8),
    // biome-ignore format: a list of words.
    words: ['times: 1000', 'tempo: 40', 'rest: 64', '; name: ', ';;', '\r\n', '#', ' to ', '>', 'lead: changes', '9e99'],
    read: sheetHolds,
  },
  {
    name: 'scores (MusicXML)',
    corpus: async () => good.sheets().map((text) => good.utf8(good.score(text))),
    words: [
      '<repeat direction="forward"/>',
      '<note>',
      '</note>',
      '<chord/>',
      '<rest/>',
      '<duration>0</duration>',
      '&lt;',
      '<!--',
      '<!DOCTYPE x [<!ENTITY a "b">]>',
      '<backup><duration>9</duration></backup>',
    ],
    read: sheetHolds,
  },
  {
    name: 'compressed scores',
    corpus: async () =>
      ['>RLR >LRL ; times: 4', 'R>LR L>RL ; times: 2'].map((text) => good.compressed(good.score(text))),
    words: ['PK\u0003\u0004', 'PK\u0001\u0002', 'PK\u0005\u0006', '../score.xml'],
    read: sheetHolds,
  },
  {
    name: 'rubrics',
    corpus: async () => good.rubricFiles(),
    words: ['null', '1e999', '-1', '"__proto__"', '{}', '[]', '"steady"', 'true'],
    read: jsonHolds(readRubric, [InvalidRubric]),
  },
  {
    name: 'results of takes',
    corpus: async () => good.results(),
    words: ['null', '1e999', '-1', '[]', '{}', '"x"', ','],
    read: jsonHolds(upgradeTakeResult, [InvalidTakeResult, NewerTakeResult]),
  },
  {
    name: 'MIDI files',
    corpus: async () => good.midiFiles(),
    words: ['MTrk', '\u00ff\u0051\u0003', '\u00ff\u002f\u0000'],
    read: (bytes) => midiNotes(bytes).ok,
  },
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
  {
    name: 'recordings that broke off',
    corpus: async () => [good.brokenOff()],
    words: ['EVHTAKE1', '\u0001\u0000\u0000\u0000', '{}', '1e300', '"sampleRate":'],
    read: (bytes) => decodeTake(new Uint8Array(bytes)) !== null,
  },
  {
    name: 'calls of the page',
    corpus: async () => good.callMessages(),
    words: ['bytes-behind', '[1e300,1]', '[-1,2]', '{}', 'null', '"__proto__"'],
    read: messageHolds,
  },
];
