import { expect, it } from 'vitest';
import { practiceLoad } from '../../../src/core/progress/practice-load.ts';
import { jumpSentences, recordedOnlyWords } from '../../../src/core/progress/practice-words.ts';

const week = (day: string, minutes: number, kind: 'recorded' | 'logged' = 'recorded') => ({
  day,
  minutes,
  kind,
});

it('says whether minutes written down are in it, and states jumps as facts', () => {
  const load = practiceLoad([week('2026-03-02', 40), week('2026-03-09', 60), week('2026-03-16', 150)]);
  expect(recordedOnlyWords(load)).toContain('Recorded takes only');
  expect(jumpSentences(load)).toEqual([
    'Week from 16\u00a0Mar: 150 minutes, after 50 a week in the 2 weeks before.',
  ]);
  const logged = practiceLoad([week('2026-03-02', 40), week('2026-03-03', 20, 'logged')]);
  expect(recordedOnlyWords(logged)).toBe('Recorded takes, and minutes written down by hand.');
  expect(jumpSentences(logged)).toEqual([]);
});
