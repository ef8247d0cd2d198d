import { describe, expect, it } from 'vitest';
import { countTakes, listTakes } from '../../src/library/list-takes.ts';
import { deletePerson, mergePeople } from '../../src/library/move-people.ts';
import { addPerson, changePerson, listPeople } from '../../src/library/people.ts';
import { readTake } from '../../src/library/read-take.ts';
import { listRemarks, writeRemark } from '../../src/library/remarks.ts';
import { readTakeFile } from '../../src/library/take-file/read-take-file.ts';
import { writeTakeFile } from '../../src/library/take-file/write-take-file.ts';
import { receiveTake, takeParcel } from '../../src/library/take-parcels.ts';
import { madeParcel } from './take-file/made-parcel.ts';
import { withLibrary } from './temporary-library.ts';

const levels = {
  right: { levelDb: -20, spreadDb: 1, strokes: 8 },
  left: { levelDb: -21, spreadDb: 1.5, strokes: 8 },
  noiseFloorDb: -60,
};

describe('a take that travels', () => {
  it('arrives with all that belongs to it, through a file', () =>
    withLibrary(async (library) => {
      const setUp = { id: 's1', recordedAt: 3, day: '2026-03-10', pad: 'p', sticks: '', device: '', levels };
      const parcel = madeParcel(1, { setUp });
      const file = await readTakeFile(await writeTakeFile([parcel]));
      if (!file.ok) throw new Error(file.fault.code);
      const { id, outcome, newRemarks } = await receiveTake(library, file.takes[0]!, 99);
      expect([outcome, newRemarks]).toEqual(['kept', 2]);
      expect(await takeParcel(library, id)).toEqual(parcel);
    }));

  it('changes nothing when it arrives again, and brings only remarks that are new', () =>
    withLibrary(async (library) => {
      const { id } = await receiveTake(library, madeParcel(1), 99);
      const before = await readTake(library.db, id);
      expect(await receiveTake(library, madeParcel(1), 1234)).toEqual({
        id,
        outcome: 'already-there',
        newRemarks: 0,
      });
      expect(await readTake(library.db, id)).toEqual(before);
      expect(await listPeople(library.db)).toHaveLength(1);

      const { remarks } = madeParcel(1);
      const answer = { ...remarks[0]!, id: 'r1-3', moment: 3, text: 'And here?' };
      const mended = { ...remarks[1]!, text: 'Listen to these taps.', changedAt: 70 };
      const back = madeParcel(1, { remarks: [remarks[0]!, mended, answer] });
      expect((await receiveTake(library, back, 2000)).newRemarks).toBe(2);
      expect((await listRemarks(library.db, id)).map(({ text }) => text)).toEqual([
        'Much calmer than last week.',
        'And here?',
        'Listen to these taps.',
      ]);
      // An older wording doesn't come back.
      expect((await receiveTake(library, madeParcel(1), 3000)).newRemarks).toBe(0);
    }));

  it('finds its player by id, by the name alone, and after two were joined', () =>
    withLibrary(async (library) => {
      const { db } = library;
      await addPerson(db, { id: 'own', name: 'MIRELLE ', role: 'student', note: '', createdAt: 1 });
      await receiveTake(library, madeParcel(1), 99);
      expect((await listPeople(db)).map(({ id, takes }) => [id, takes])).toEqual([['own', 1]]);
      // Once joined by name, a change of name doesn't part them.
      await changePerson(db, { id: 'own', name: 'Mirelle K.' });
      await receiveTake(library, madeParcel(2), 99);
      expect((await listPeople(db)).map(({ name, takes }) => [name, takes])).toEqual([['Mirelle K.', 2]]);

      await receiveTake(library, madeParcel(3, { player: { id: 'other', name: 'Jonne' } }), 99);
      await mergePeople(db, { from: 'other', into: 'own' });
      await receiveTake(library, madeParcel(4, { player: { id: 'other', name: 'Jonne' } }), 99);
      expect((await listPeople(db)).map(({ id, takes }) => [id, takes])).toEqual([['own', 4]]);
      expect(await countTakes(db, { personId: 'own', exerciseId: 'accent-1-hand-to-hand' })).toBe(4);
    }));

  it('is a new person where two have the name already', () =>
    withLibrary(async (library) => {
      for (const id of ['a', 'b'])
        await addPerson(library.db, { id, name: 'Mirelle', role: 'student', note: '', createdAt: 1 });
      await receiveTake(library, madeParcel(1), 99);
      expect((await listPeople(library.db)).map(({ takes }) => takes).sort()).toEqual([0, 0, 1]);
    }));

  it('comes without what says nothing: a player without a letter, a remark without a word', () =>
    withLibrary(async (library) => {
      const blank = madeParcel(1).remarks.map((remark) => ({ ...remark, text: ' ' }));
      const { outcome, newRemarks } = await receiveTake(
        library,
        madeParcel(1, { player: { id: 'x', name: ' \u0000' }, remarks: blank }),
        99,
      );
      expect([outcome, newRemarks]).toEqual(['kept', 0]);
      expect(await listPeople(library.db)).toEqual([]);
    }));

  it('goes for good with its person', () =>
    withLibrary(async (library) => {
      await receiveTake(library, madeParcel(1), 99);
      await receiveTake(library, madeParcel(2, { player: null }), 99);
      const [person] = await listPeople(library.db);
      expect(await deletePerson(library, person!.id)).toEqual({ takes: 1, audioBytes: 1000 });
      expect(await listPeople(library.db)).toEqual([]);
      expect(await library.audio.list()).toHaveLength(1);
      expect((await listTakes(library.db)).takes).toHaveLength(1);
    }));
});

it('a remark must have words and a moment within sense', () =>
  withLibrary(async (library) => {
    const { id: takeId } = await receiveTake(library, madeParcel(1), 99);
    const remark = { id: 'x', takeId, moment: 1, text: 'Here.', author: '', writtenAt: 1, changedAt: 1 };
    expect(await writeRemark(library.db, remark)).toBe(true);
    for (const wrong of [{ text: ' ' }, { moment: -1 }, { moment: Number.NaN }, { takeId: 'gone' }]) {
      await expect(writeRemark(library.db, { ...remark, id: 'y', ...wrong })).rejects.toThrow();
    }
  }));
