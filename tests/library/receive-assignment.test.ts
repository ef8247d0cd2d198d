import { expect, it } from 'vitest';
import { listAssignments } from '../../src/library/assignments.ts';
import { openAssignments } from '../../src/library/open-assignments.ts';
import { addPerson, listPeople } from '../../src/library/people.ts';
import { receiveAssignment } from '../../src/library/receive-assignment.ts';
import { withLibrary } from './temporary-library.ts';

const sheet = (head: string) => `title: Week 7\n${head}\n>RLR >LRL ; times: 4\n`;

it('keeps a sheet with headings once, for the player it names, and adds one whom nobody knows', () =>
  withLibrary(async ({ db }) => {
    await addPerson(db, { id: 'm', name: 'Mirelle', role: 'student', note: '', createdAt: 0 });
    let count = 0;
    const receive = (text: string, personId: string | null = null) => {
      count++;
      return receiveAssignment(db, { id: `${count}`, sheetText: text, personId, setAt: count });
    };
    const week = sheet('for: mirelle\ndue: 2026-12-01\nnote: Softly');
    expect(await receive(week)).toEqual({ outcome: 'kept', personId: 'm', dueDay: '2026-12-01' });
    expect(await receive(week)).toMatchObject({ outcome: 'already-there', personId: 'm' });
    expect(await receive(sheet('due: 2026-11-30'), 'm')).toMatchObject({ outcome: 'kept', personId: 'm' });
    expect(await receive(sheet('note: For everybody'))).toMatchObject({ outcome: 'kept', personId: null });
    const joris = await receive(sheet('for: Joris'), 'm');
    expect((await listPeople(db)).map(({ id, name }) => [id, name])).toEqual([
      [joris!.personId, 'Joris'],
      ['m', 'Mirelle'],
    ]);
    expect(await receive('>RLR >LRL')).toBeNull();
    expect(await receive('>RLX')).toBeNull();
    expect(await listAssignments(db)).toHaveLength(4);

    // What is due first comes first; what is for anybody is for everyone.
    const open = await openAssignments(db, 'm');
    expect(open.map(({ dueDay, note }) => [dueDay, note])).toEqual([
      ['2026-11-30', ''],
      ['2026-12-01', 'Softly'],
      [null, 'For everybody'],
    ]);
    expect(open[0]!.sheetText).not.toContain('due');
  }));
