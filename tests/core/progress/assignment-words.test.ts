import { describe, expect, it } from 'vitest';
import type { AssignmentTempo } from '../../../src/core/progress/assignment-tempo.ts';
import {
  assignmentState,
  assignmentWords,
  playedWords,
} from '../../../src/core/progress/assignment-words.ts';

const take = (
  day: string,
  score: number | null,
  tempo: AssignmentTempo = 'asked',
  bpm: number | null = 96,
) => ({ day, score, tempo, bpm });
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
    expect(playedWords([take('2026-03-14', 81)])).toBe('played once, on 2026-03-14, best score 81');
    expect(playedWords([take('2026-03-12', 70.2), take('2026-03-14', null)])).toBe(
      'played 2 times, the last on 2026-03-14, best score 70',
    );
  });

  it('of takes at other tempos: none of them counts as played, nor its score', () => {
    const slower = take('2026-03-11', 95, 'slower', 80.4);
    const last = take('2026-03-12', 90, 'slower', 88);
    const faster = take('2026-03-13', 60, 'other', 112);
    expect(playedWords([slower])).toBe('not played at its tempo yet; 1 slower take toward it, at 80 BPM');
    expect(playedWords([slower, last, take('2026-03-14', 81), faster])).toBe(
      'played once, on 2026-03-14, best score 81; 2 slower takes toward it, the last at 88 BPM; 1 take at another tempo, at 112 BPM',
    );
    expect(playedWords([take('2026-03-14', null, 'unknown', null)])).toBe(
      'not played at its tempo yet; 1 take without a tempo that could be told',
    );
  });
});
