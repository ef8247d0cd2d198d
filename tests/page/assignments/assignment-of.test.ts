import { expect, it } from 'vitest';
import { assignmentOf } from '../../../src/page/assignments/assignment-of.ts';

const wished = { text: 'for: Mirelle\n>RLR', personId: 'p', dueDay: '', tempo: '', note: ' Softly ' };

it('writes the tempo into the sheet and leaves headings to the assignment', () => {
  const made = assignmentOf({ ...wished, tempo: '96' });
  expect(made).toMatchObject({
    ok: true,
    assignment: { personId: 'p', dueDay: null, note: 'Softly', bpm: null },
  });
  expect(made.ok && made.assignment.sheetText).toBe('tempo: 96\n\n>RLR\n');
});

it('says what is wrong with a sheet or a tempo', () => {
  expect(assignmentOf({ ...wished, text: 'RLX' })).toMatchObject({
    ok: false,
    sentence: expect.stringContaining('"X" means nothing'),
  });
  expect(assignmentOf({ ...wished, tempo: '5' })).toEqual({
    ok: false,
    sentence: 'Write a tempo from 10 to 500, or none.',
  });
});
