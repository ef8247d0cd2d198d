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
import { unpackMessage } from '../../src/library/call-message.ts';
import { decodeTake } from '../../src/page/recording/kept/chunk-file.ts';
import { archiveParsers } from './archive-parsers.ts';
import * as good from './good-files.ts';
import type { Parser } from './parser.ts';

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
  ...archiveParsers,
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
