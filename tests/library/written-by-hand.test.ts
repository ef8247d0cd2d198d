import { describe, expect, it } from 'vitest';
import { guessRecords } from '../../src/core/progress/guess-record.ts';
import { judgeGuess } from '../../src/core/progress/judge-guess.ts';
import {
  deleteAssignment,
  finishAssignment,
  listAssignments,
  setAssignment,
} from '../../src/library/assignments.ts';
import { changeTake, regradeTake } from '../../src/library/change-take.ts';
import { judgedGuesses, keepGuess, listGuesses, readGuess } from '../../src/library/guess.ts';
import { keepTake } from '../../src/library/keep-take.ts';
import { listLinePlays } from '../../src/library/line-plays.ts';
import { addPerson } from '../../src/library/people.ts';
import {
  deletePractice,
  listDiscomfort,
  practiceDays,
  writeDiscomfort,
  writePractice,
} from '../../src/library/practice.ts';
import { readTake } from '../../src/library/read-take.ts';
import { keepSetUp, listSetUps } from '../../src/library/set-up.ts';
import { storageUse } from '../../src/library/storage-use.ts';
import { madeTake, sheetText } from './made-take.ts';
import { withLibrary } from './temporary-library.ts';

const person = { id: 'p', name: 'Anke', role: 'student', note: '', createdAt: 0 } as const;

describe('what is written down by hand', () => {
  it('assignments are handed out, finished and deleted with their sheet', () =>
    withLibrary(async ({ db }) => {
      await addPerson(db, person);
      const assignment = {
        id: 'a',
        personId: 'p',
        sheetText,
        bpm: 96,
        dueDay: '2026-03-16',
        note: 'slowly',
        setAt: 5,
        doneAt: null,
      };
      await setAssignment(db, assignment);
      expect(await listAssignments(db, { personId: 'p' })).toEqual([
        { ...assignment, title: 'Accents on 1 and 2' },
      ]);
      expect(await listAssignments(db, { personId: null })).toEqual([]);
      await finishAssignment(db, { id: 'a', doneAt: 9 });
      expect((await listAssignments(db))[0]?.doneAt).toBe(9);
      for (const wrong of [{ sheetText: 'no' }, { dueDay: 'friday' }, { personId: 'nobody' }])
        await expect(setAssignment(db, { ...assignment, id: 'b', ...wrong })).rejects.toThrow();
      await deleteAssignment(db, 'a');
      expect(await db.selectFrom('sheet').selectAll().execute()).toEqual([]);
    }));

  it('a day of practice adds recorded takes and what was written down', () =>
    withLibrary(async (library) => {
      const { db } = library;
      await addPerson(db, person);
      for (const number of [1, 2])
        await keepTake(library, madeTake(number, { personId: 'p', day: '2026-03-10' }));
      await keepTake(library, madeTake(3, { personId: null, day: '2026-03-10' }));
      const entry = {
        id: 'e',
        personId: 'p',
        day: '2026-03-11',
        minutes: 25,
        strokesRight: 600,
        strokesLeft: null,
        note: '',
      };
      await writePractice(db, entry);
      await writePractice(db, { ...entry, minutes: 20 });
      const days = await practiceDays(db, { personId: 'p', fromDay: '2026-03-01', toDay: '2026-03-31' });
      const { strokes, recording } = madeTake(1).result;
      const right = strokes.hand.filter((hand) => hand === 'R').length;
      expect(
        days.map(({ day, takes, strokesRight, writtenMinutes, writtenRight }) => [
          day,
          takes,
          strokesRight,
          writtenMinutes,
          writtenRight,
        ]),
      ).toEqual([
        ['2026-03-10', 2, 2 * right, 0, 0],
        ['2026-03-11', 0, 0, 20, 600],
      ]);
      expect(days[0]!.recordedMinutes).toBeCloseTo((2 * recording.duration) / 60, 9);
      for (const minutes of [-1, 1441, Number.NaN])
        await expect(writePractice(db, { ...entry, minutes })).rejects.toMatchObject({
          code: 'value-out-of-range',
        });
      await deletePractice(db, 'e');
      expect(await practiceDays(db, { personId: 'p', fromDay: '2026-03-11', toDay: '2026-03-31' })).toEqual(
        [],
      );
      const note = { id: 'n', personId: 'p', day: '2026-03-12', text: 'left forearm' };
      await writeDiscomfort(db, note);
      expect(await listDiscomfort(db, { personId: 'p', fromDay: '2026-03-01', toDay: '2026-03-31' })).toEqual(
        [note],
      );
    }));

  it('a guess is kept once, before the truth is known', () =>
    withLibrary(async (library) => {
      const { id: takeId } = await keepTake(library, madeTake(1));
      const guess = { guessedAt: 7, worstLine: 1, tempo: 'rushed' } as const;
      expect(await keepGuess(library.db, { takeId, guess })).toBe(true);
      expect(await keepGuess(library.db, { takeId, guess: { ...guess, worstLine: 0 } })).toBe(false);
      expect(await readGuess(library.db, takeId)).toEqual(guess);
      expect(await listGuesses(library.db, { personId: null })).toEqual([{ takeId, guess }]);
      const judged = guessRecords(judgeGuess(guess, (await readTake(library.db, takeId)).result));
      expect(await judgedGuesses(library.db, { personId: null })).toEqual(judged);
      await expect(
        keepGuess(library.db, { takeId, guess: { ...guess, tempo: 'fast' } as never }),
      ).rejects.toMatchObject({ code: 'value-out-of-range' });
    }));

  it('same-set-up strokes are kept and named by takes', () =>
    withLibrary(async (library) => {
      const hand = { levelDb: -20, spreadDb: 1, strokes: 8 };
      const setUp = {
        id: 's',
        personId: null,
        recordedAt: 1,
        day: '2026-03-09',
        pad: 'grey',
        sticks: '',
        device: '',
        levels: { right: hand, left: hand, noiseFloorDb: null },
      };
      await keepSetUp(library.db, setUp);
      expect(await listSetUps(library.db, { personId: null })).toEqual([setUp]);
      const { id } = await keepTake(library, madeTake(1, { setUpId: 's' }));
      expect((await readTake(library.db, id)).take.setUpId).toBe('s');
      const other = await keepTake(library, madeTake(2, { setUpId: 'deleted meanwhile' }));
      expect((await readTake(library.db, other.id)).take.setUpId).toBeNull();
    }));

  it('details and tags of a take change, and stay where they are not given', () =>
    withLibrary(async (library) => {
      const { id } = await keepTake(library, madeTake(1, { details: { pad: 'grey' }, tags: ['one'] }));
      await changeTake(library.db, { id, technique: ' finger ' });
      await changeTake(library.db, { id, tags: ['Two', 'two', ''] });
      const { take } = await readTake(library.db, id);
      expect([take.pad, take.technique, take.tags]).toEqual(['grey', 'finger', ['two']]);
      await expect(changeTake(library.db, { id: 'gone', pad: '' })).rejects.toMatchObject({
        code: 'no-such-take',
      });
    }));
});

it('a take graded anew stays the same take, with its remarks, and its lines follow', () =>
  withLibrary(async (library) => {
    const { db } = library;
    const { id } = await keepTake(library, madeTake(1));
    const { result } = madeTake(1);
    const measures = result.measures.map((one) =>
      one.id === 'accent-to-tap-ratio' && one.scope.line === 1 && one.outcome.state === 'measured'
        ? { ...one, outcome: { ...one.outcome, value: 12.345678 } }
        : one,
    );
    await regradeTake(db, { id, result: { ...result, measures }, gradedWith: '9.9' });
    const { take } = await readTake(db, id);
    expect(take.gradedWith).toBe('9.9');
    const asked = { personId: null, exerciseId: 'accent-2-hand-to-hand' };
    const [play] = await listLinePlays(db, asked);
    expect(play).toMatchObject({ takeId: id, place: 1, bpm: 100, repeats: 3 });
    expect(play!.figures['accent-to-tap-ratio']).toEqual([12.3457, 7.3, 9.7, 35]);
    expect(await listLinePlays(db, { ...asked, fromDay: '2026-03-11' })).toEqual([]);
  }));

it('storageUse counts a shared recording once', () =>
  withLibrary(async (library) => {
    const audio = { name: 'a.wav', bytes: new Uint8Array(5000) };
    await keepTake(library, madeTake(1, { audio, part: { from: 0, to: 1 } }));
    await keepTake(library, madeTake(2, { audio, part: { from: 1, to: 2 } }));
    const use = await storageUse(library.db);
    expect(use).toMatchObject({ takes: 2, recordings: 1, audioBytes: 5000 });
    expect(use.tableBytes).toBeGreaterThan(4096);
  }));
