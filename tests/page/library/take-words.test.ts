import { expect, it } from 'vitest';
import type { ListedTake } from '../../../src/library/listed-takes.ts';
import {
  counted,
  dayInWords,
  dimensionsInWords,
  playedInWords,
  roomInWords,
  scoreInWords,
  tempoInWords,
} from '../../../src/page/library/take-words.ts';

it('days, tempos, room and counts as people say them', () => {
  expect(dayInWords('2026-03-09')).toBe('Mon, 9 Mar 2026');
  expect(tempoInWords({ bpmLow: 96, bpmHigh: 96, bpmPlayed: 97.2 })).toBe('96 BPM');
  expect(tempoInWords({ bpmLow: 80, bpmHigh: 120, bpmPlayed: null })).toBe('80 to 120 BPM');
  expect(tempoInWords({ bpmLow: null, bpmHigh: null, bpmPlayed: 97.2 })).toBe('about 97 BPM');
  expect(tempoInWords({ bpmLow: null, bpmHigh: null, bpmPlayed: null })).toBe('tempo not known');
  expect([0, 386_100, 2_360_684, 213_400_000, 4_960_000_000].map(roomInWords)).toEqual([
    '0 kB',
    '387 kB',
    '2.4 MB',
    '213 MB',
    '5.0 GB',
  ]);
  expect([counted(1, 'take'), counted(3412, 'take')]).toEqual(['1 take', '3,412 takes']);
});

it('what was played, where a sheet has a title, names of lines, or neither', () => {
  expect(playedInWords({ title: 'Week 7', lines: ['a'] })).toBe('Week 7');
  expect(playedInWords({ title: '', lines: ['Accent on 1', 'Accent on 2'] })).toBe(
    'Accent on 1, Accent on 2',
  );
  expect(playedInWords({ title: '', lines: ['One', 'Two', 'Three'] })).toBe('One and 2 more lines');
  expect(playedInWords({ title: '', lines: ['', ''] })).toBe('Untitled exercise');
});

it('scores with their words, or why there is none', () => {
  const take = { score: 84.3, scoreWord: 'nearly', graded: true } as ListedTake;
  expect(scoreInWords(take)).toBe('84, nearly there');
  expect(scoreInWords({ ...take, score: null })).toBe('no score: too few strokes');
  expect(scoreInWords({ ...take, score: null, graded: false })).toBe('could not be graded');
  const dimensions = [{ id: 'hands', score: 71.4, word: 'not-yet' as const }];
  expect(dimensionsInWords({ ...take, dimensions })).toBe('Hands 71 (not yet)');
});
