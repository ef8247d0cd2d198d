import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { strToU8, zipSync } from 'fflate';
import { rubricToStartFrom } from '../../src/cli/rubric-command.ts';
import { listExercises } from '../../src/core/exercise/catalogue.ts';
import { layOut } from '../../src/core/exercise/lay-out.ts';
import { parseNotation } from '../../src/core/exercise/parse-notation.ts';
import { parseSheet } from '../../src/core/exercise/parse-sheet.ts';
import { writeSheet } from '../../src/core/exercise/write-sheet.ts';
import { NewerTakeResult, upgradeTakeResult } from '../../src/core/result/upgrade-take-result.ts';
import { InvalidTakeResult } from '../../src/core/result/validate-take-result.ts';
import { InvalidRubric, readRubric } from '../../src/core/scoring/read-rubric.ts';
import { rubrics } from '../../src/core/scoring/rubrics/index.ts';
import { midiNotes } from '../../src/formats/midi-notes.ts';
import { writeMusicXml } from '../../src/formats/music-xml/write-music-xml.ts';
import { readSheetFile } from '../../src/formats/read-sheet-file.ts';
import { takeMidi } from '../../src/formats/take-midi.ts';
import { readTakeFile } from '../../src/library/take-file/read-take-file.ts';
import { takeFileChunks } from '../../src/library/take-file/write-take-file.ts';
import { madeParcel } from '../library/take-file/made-parcel.ts';

/** Something that reads files from outside: good ones to damage, and what it makes of any bytes, thrown errors apart. */
export interface Parser {
  readonly name: string;
  readonly corpus: () => Promise<readonly Uint8Array[]>;
  /** Pieces that mean something to it. */
  readonly words: readonly string[];
  /** Whether it could use the file; throws only what it must not throw. */
  readonly read: (bytes: Uint8Array) => boolean | Promise<boolean>;
}

const root = join(import.meta.dirname, '../..');
const utf8 = (text: string) => new TextEncoder().encode(text);
const textOf = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
const notations = ['>RLR >LRL', 'RR>L LLR | lRLz -RL', '>RLRLRL R--- llR>L- | RzL', 'RLRLR LRLRLRL R RLRL'];

function sheets(): string[] {
  const takes = join(root, 'fixtures/takes');
  return [
    ...readdirSync(takes)
      .filter((name) => name.endsWith('.sheet'))
      .map((name) => readFileSync(join(takes, name), 'utf8')),
    'title: Week 7\ntempo: 97.5\ntimes: 3\n\n>RLR >LRL ; rest: 4 ; name: A < B # note\nRR>L LLR ; lead: changes ; ratio: 8 to 16 dB',
    ...listExercises()
      .filter((_, i) => i % 60 === 0)
      .map(({ id }) => `${id} ; times: 4 ; tempo: 120`),
  ];
}

function score(text: string): string {
  const parsed = parseSheet(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return writeMusicXml(parsed.sheet);
}

const container =
  '<?xml version="1.0"?><container><rootfiles><rootfile full-path="score.xml"/></rootfiles></container>';
const compressed = (text: string) =>
  zipSync({ 'META-INF/container.xml': strToU8(container), 'score.xml': strToU8(text) });

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

/** Reads JSON; null where it is none. */
function json(bytes: Uint8Array): { readonly value: unknown } | null {
  try {
    return { value: JSON.parse(textOf(bytes)) };
  } catch {
    return null;
  }
}

const demo = () => readFileSync(join(root, 'reports/samples/demo.json'));

/** One note of format 0: MThd, 96 steps a beat; note on, and the track's end. */
const shortMidi = Uint8Array.from([
  ...utf8('MThd'),
  0,
  0,
  0,
  6,
  0,
  0,
  0,
  1,
  0,
  96,
  ...utf8('MTrk'),
  0,
  0,
  0,
  12,
  0,
  0x99,
  38,
  100,
  96,
  0x99,
  38,
  0,
  0,
  0xff,
  0x2f,
  0,
]);

/** Every parser of files from outside but those of sound. */
export const parsers: readonly Parser[] = [
  {
    name: 'notation',
    corpus: async () => notations.map(utf8),
    words: ['>', 'z', '|', '-', 'R', 'l', '||', '(', ';', '\u2028', '🥁'],
    read: (bytes) => parseNotation(textOf(bytes)).ok,
  },
  {
    name: 'sheets',
    corpus: async () => sheets().map(utf8),
    words: [
      'times: 1000',
      'tempo: 40',
      'rest: 64',
      '; name: ',
      ';;',
      '\r\n',
      '#',
      ' to ',
      '>',
      'lead: changes',
      '9e99',
    ],
    read: sheetHolds,
  },
  {
    name: 'scores (MusicXML)',
    corpus: async () => sheets().map((text) => utf8(score(text))),
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
    corpus: async () => [
      compressed(score('>RLR >LRL ; times: 4')),
      compressed(score('R>LR L>RL ; times: 2')),
    ],
    words: ['PK\u0003\u0004', 'PK\u0001\u0002', 'PK\u0005\u0006', '../score.xml'],
    read: sheetHolds,
  },
  {
    name: 'rubrics',
    corpus: async () => [
      ...rubrics.map((rubric) => utf8(JSON.stringify(rubricToStartFrom(rubric)))),
      utf8('{"basedOn":"steady","measures":{"timing-spread-share":{"secure":4,"nearly":9}}}'),
    ],
    words: ['null', '1e999', '-1', '"__proto__"', '{}', '[]', '"steady"', 'true'],
    read: (bytes) => {
      const read = json(bytes);
      if (read === null) return false;
      try {
        readRubric(read.value);
        return true;
      } catch (error) {
        if (error instanceof InvalidRubric) return false;
        throw error;
      }
    },
  },
  {
    name: 'results of takes',
    corpus: async () => [demo()],
    words: ['null', '1e999', '-1', '[]', '{}', '"x"', ','],
    read: (bytes) => {
      const read = json(bytes);
      if (read === null) return false;
      try {
        upgradeTakeResult(read.value);
        return true;
      } catch (error) {
        if (error instanceof InvalidTakeResult || error instanceof NewerTakeResult) return false;
        throw error;
      }
    },
  },
  {
    name: 'MIDI files',
    corpus: async () => {
      const midi = takeMidi(upgradeTakeResult(JSON.parse(textOf(demo()))));
      return [midi!, shortMidi];
    },
    words: ['MTrk', '\u00ff\u0051\u0003', '\u00ff\u002f\u0000'],
    read: (bytes) => midiNotes(bytes).ok,
  },
  {
    name: 'take files',
    corpus: async () => {
      const file = async (count: number) => {
        const chunks: Uint8Array[] = [];
        for await (const chunk of takeFileChunks(Array.from({ length: count }, (_, i) => madeParcel(i + 1))))
          chunks.push(chunk);
        return new Uint8Array(Buffer.concat(chunks));
      };
      return [await file(1), await file(3)];
    },
    words: ['PK\u0003\u0004', 'PK\u0001\u0002', 'PK\u0005\u0006', 'manifest.json', '../', '\u0000'],
    read: async (bytes) => {
      const read = await readTakeFile(bytes);
      return read.ok && read.faults.length === 0;
    },
  },
];
