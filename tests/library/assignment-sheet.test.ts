import { expect, it } from 'vitest';
import { assignmentSheet } from '../../src/library/assignment-sheet.ts';

it('writes for whom a sheet is, until when and how fast', () => {
  const assignment = { sheetText: 'title: Week 7\n>RLR >LRL\n', dueDay: '2026-12-01', note: '', bpm: 96 };
  expect(assignmentSheet(assignment, 'Mirelle')).toBe(
    'title: Week 7\nfor: Mirelle\ndue: 2026-12-01\ntempo: 96\n\n>RLR >LRL\n',
  );
});
