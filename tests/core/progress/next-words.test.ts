import { expect, it } from 'vitest';
import { nextWords } from '../../../src/core/progress/next-words.ts';
import { startTempo, tempoAdvice } from '../../../src/core/scoring/tempo-advice.ts';

const scores = (evenness: number, dynamics = evenness) => ({
  dimensions: [
    { id: 'evenness', score: { score: evenness } },
    { id: 'dynamics', score: { score: dynamics } },
  ],
});

it('says each piece of advice on the next tempo in a few words', () => {
  const advised = (asked: Omit<Parameters<typeof tempoAdvice>[0], 'bpm'>) =>
    nextWords(tempoAdvice({ bpm: 100, ...asked })!);
  expect(nextWords({ code: 'tempo-up', facts: { bpm: 100, fromBpm: 104, toBpm: 106 } })).toBe(
    'up to 104–106 BPM',
  );
  expect(advised({ scores: scores(90), cleanOnAnotherDay: true })).toBe('up to 104–106 BPM');
  expect(advised({ scores: scores(90) })).toBe('100 BPM once more on another day, then up');
  expect(advised({ scores: scores(90, 70) })).toBe('stay at 100 BPM, weakest: accents and taps');
  expect(advised({ scores: scores(50) })).toBe('down to 90 BPM');
  expect(advised({ scores: scores(90), fading: true })).toBe('100 BPM after a rest, in shorter takes');
  expect(advised({ scores: scores(90), discomfort: true })).toBe('none while discomfort is noted');
  expect(nextWords(startTempo({ cleanestBpm: null }))).toBe('start at 80 BPM');
  expect(nextWords(startTempo({ cleanestBpm: 120 }))).toBe('start at 102–108 BPM');
  expect(nextWords(startTempo({ cleanestBpm: null, triedBpm: 100 }))).toBe('start at 85–90 BPM');
});
