import { expect, it } from 'vitest';
import { parseSheet } from '../../src/core/exercise/parse-sheet.ts';
import { assignmentPlays } from '../../src/library/assignment-plays.ts';
import { keepTake } from '../../src/library/keep-take.ts';
import { addPerson } from '../../src/library/people.ts';
import { madeTake, sheetText } from './made-take.ts';
import { withLibrary } from './temporary-library.ts';

it('counts the takes of its player that hold all of its exercises, from the day it was set on', () =>
  withLibrary(async (library) => {
    for (const id of ['anke', 'bo'])
      await addPerson(library.db, { id, name: id, role: 'student', note: '', createdAt: 0 });
    const parsed = parseSheet(sheetText);
    const ids = parsed.ok ? parsed.sheet.lines.map(({ id }) => id) : [];
    const played: readonly (readonly [number, string])[] = [
      [0, 'anke'],
      [3, 'anke'],
      [4, 'bo'],
      [5, 'anke'],
    ];
    for (const [number, personId] of played) {
      const made = madeTake(number);
      const lines = made.result.sheet.lines.map((line, i) => ({ ...line, id: ids[i]! }));
      const result = { ...made.result, sheet: { ...made.result.sheet, lines } };
      await keepTake(library, { ...made, result, personId });
    }
    const setAt = madeTake(3).recordedAt + 3_600_000;
    const daysOf = async (text: string, personId: string | null, doneAt: number | null = null) =>
      (await assignmentPlays(library.db, { sheetText: text, personId, bpm: null, setAt, doneAt })).map(
        ({ day }) => day,
      );
    const day = (number: number) => madeTake(number).day;

    expect(await daysOf(sheetText, 'anke')).toEqual([day(3), day(5)]);
    expect(await daysOf(sheetText, null)).toEqual([day(3), day(4), day(5)]);
    expect(await daysOf(sheetText, 'anke', madeTake(4).recordedAt)).toEqual([day(3)]);
    // One of its exercises, at another tempo: these takes are named too.
    expect(await daysOf('tempo: 60\n>RLR >LRL ; times: 2', 'anke')).toEqual([day(3), day(5)]);
    expect(await daysOf(`${sheetText}\nRL>R LR>L`, 'anke')).toEqual([]);

    const temposOf = async (text: string, bpm: number | null = null) =>
      (
        await assignmentPlays(library.db, { sheetText: text, personId: 'anke', bpm, setAt, doneAt: null })
      ).map(({ tempo }) => tempo);
    // Both lines were played at the 100 BPM of their sheet.
    expect(await temposOf(sheetText)).toEqual(['asked', 'asked']);
    expect(await temposOf(sheetText, 102)).toEqual(['asked', 'asked']);
    expect(await temposOf(sheetText, 112)).toEqual(['slower', 'slower']);
    expect(await temposOf('tempo: 60\n>RLR >LRL ; times: 2')).toEqual(['other', 'other']);
    expect(await temposOf('>RLR >LRL ; times: 2')).toEqual(['asked', 'asked']);
  }));
