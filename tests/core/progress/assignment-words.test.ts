import { describe, expect, it } from 'vitest';
import {
  assignmentState,
  assignmentWords,
  playedWords,
} from '../../../src/core/progress/assignment-words.ts';

const due = (dueDay: string | null, doneAt: number | null = null) => ({ dueDay, doneAt });

describe('assignmentState', () => {
  it.each([
    ['2026-03-15', 'open'],
    ['2026-03-16', 'due-today'],
    ['2026-03-17', 'overdue'],
  ])('on %s is %s where the day is 2026-03-16', (today, state) => {
    expect(assignmentState(due('2026-03-16'), today)).toBe(state);
  });

  it('is never late without a day, and done whatever the day', () => {
    expect(assignmentState(due(null), '2999-01-01')).toBe('open');
    expect(assignmentState(due('2026-03-16', 1), '2026-03-17')).toBe('done');
  });
});

describe('words', () => {
  it.each([
    ['2026-03-17', 'was due on 2026-03-16, a day ago'],
    ['2026-03-16', 'due today, 2026-03-16'],
    ['2026-02-28', 'due on 2026-03-16, in 16 days'],
  ])('of an assignment seen from %s', (today, words) => {
    expect(assignmentWords(due('2026-03-16'), today)).toBe(words);
  });

  it('of what was played to it', () => {
    expect(playedWords([])).toBe('not played yet');
    expect(playedWords([{ day: '2026-03-14', score: 81 }])).toBe('played once, on 2026-03-14, best score 81');
    expect(
      playedWords([
        { day: '2026-03-12', score: 70.2 },
        { day: '2026-03-14', score: null },
      ]),
    ).toBe('played 2 times, the last on 2026-03-14, best score 70');
  });
});
