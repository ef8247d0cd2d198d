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
  const tempo = (bpmPlayed: number | null, ...lines: [number | null, number | null][]) => {
    const asked = lines.flatMap(([bpm]) => bpm ?? []);
    return tempoInWords({
      bpmLow: asked.length === 0 ? null : Math.min(...asked),
      bpmHigh: asked.length === 0 ? null : Math.max(...asked),
      bpmPlayed,
      tempos: lines.map(([bpm, played]) => ({ asked: bpm, played })),
    });
  };
  expect(tempo(97.2, [96, 97.2])).toBe('96 BPM');
  expect(tempo(98.8, [96, 98.8])).toBe('96 BPM');
  expect(tempo(92.3, [80, 92.3])).toBe('92 BPM (asked: 80 BPM)');
  expect(tempo(98.9, [96, 98.9])).toBe('99 BPM (asked: 96 BPM)');
  expect(tempo(null, [80, null], [120, null])).toBe('80 to 120 BPM');
  // What a rising take didn't reach isn't played at another tempo.
  expect(tempo(90, [80, 80.4], [100, 99.7], [120, null])).toBe('80 to 120 BPM');
  // In the middle of what was asked, and yet neither line at its own tempo.
  expect(tempo(90, [80, 90.2], [100, 90.3])).toBe('90 BPM (asked: 80 to 100 BPM)');
  // Lines played alike are one tempo; others a range.
  expect(tempo(100.4, [80, 100.2], [80, 101.4])).toBe('100 BPM (asked: 80 BPM)');
  expect(tempo(86, [80, 80.3], [80, 92.2])).toBe('80 to 92 BPM (asked: 80 BPM)');
  expect(tempo(97.2, [null, 97.2])).toBe('about 97 BPM');
  expect(tempo(null, [null, null])).toBe('tempo not known');
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
