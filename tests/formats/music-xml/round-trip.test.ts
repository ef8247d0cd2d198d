import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { listExercises } from '../../../src/core/exercise/catalogue.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { lineFromText } from '../../../src/core/exercise/line-from-text.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';
import type { Beat, Hand, Note, Sheet, SheetLine } from '../../../src/core/exercise/sheet.ts';
import { writeNotation } from '../../../src/core/exercise/write-notation.ts';
import { readMusicXml } from '../../../src/formats/music-xml/read-music-xml.ts';
import { writeMusicXml } from '../../../src/formats/music-xml/write-music-xml.ts';

function back(sheet: Sheet): Sheet {
  const read = readMusicXml(writeMusicXml(sheet));
  if (!read.ok) throw new Error(JSON.stringify(read.fault));
  expect(read.notes).toEqual([]);
  return read.sheet;
}

function sheetOf(text: string): Sheet {
  const parsed = parseSheet(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.sheet;
}

describe('a sheet written as MusicXML and read again', () => {
  it('keeps the slots of every exercise of the catalogue', () => {
    for (const { id } of listExercises()) {
      const sheet = sheetOf(`${id} ; times: 3 ; tempo: 97.5`);
      expect(layOut(back(sheet)), id).toEqual(layOut(sheet));
      expect(back(sheet).lines[0], id).toMatchObject({ id, bpm: 97.5, repeats: 3 });
    }
  });

  it('keeps settings, names and titles', () => {
    const sheet = sheetOf(
      'title: <Week> & "7"\nRLRLRL RL\n>RLR >LRL RLR LRL ; times: 4 ; rest: 4 ; tempo: 100 ; name: A < B\n' +
        'RR>L LLR | lRLz -RL ; lead: changes ; ratio: 8 to 16 dB ; tempo: 72',
    );
    const again = back(sheet);
    expect(again.title).toBe(sheet.title);
    expect(layOut(again)).toEqual(layOut(sheet));
    again.lines.forEach((line, i) => {
      const { repeats, restBeats, leadChange, ratioBand, label } = sheet.lines[i]!;
      expect(line).toMatchObject({ repeats, restBeats, leadChange, ratioBand, label });
    });
    expect(again.lines[2]!.bpm).toBe(72);
  });

  const hand = fc.constantFrom<Hand>('R', 'L');
  const note: fc.Arbitrary<Note> = fc.record({
    hand,
    accent: fc.boolean(),
    buzz: fc.boolean(),
    grace: fc.array(hand, { maxLength: 3 }),
  });
  const beat: fc.Arbitrary<Beat> = fc.record({
    partials: fc.array(fc.option(note, { freq: 4 }), { minLength: 1, maxLength: 12 }),
    barBefore: fc.boolean(),
  });
  const line: fc.Arbitrary<SheetLine> = fc
    .record({
      beats: fc
        .array(beat, { minLength: 1, maxLength: 12 })
        .filter((beats) => beats.some(({ partials }) => partials.some((one) => one !== null))),
      repeats: fc.integer({ min: 1, max: 9 }),
      restBeats: fc.integer({ min: 0, max: 9 }),
      bpm: fc.integer({ min: 40, max: 220 }),
      leadChange: fc.boolean(),
    })
    .map(({ beats, ...settings }) => {
      const parsed = lineFromText(writeNotation(beats), settings);
      if (!parsed.ok) throw new Error(parsed.fault.code);
      return parsed.line;
    });

  it('keeps the slots of any sheet', () => {
    fc.assert(
      fc.property(
        fc.array(line, { minLength: 1, maxLength: 4 }),
        fc.string({ unit: 'binary', maxLength: 40 }),
        (lines, title) => {
          const sheet = { title, lines };
          const again = back(sheet);
          expect(layOut(again)).toEqual(layOut(sheet));
          expect(again.lines.map(({ restBeats, bpm }) => [restBeats, bpm])).toEqual(
            lines.map(({ restBeats, bpm }) => [restBeats, bpm]),
          );
        },
      ),
      { seed: 7, numRuns: 60 },
    );
  });
});
