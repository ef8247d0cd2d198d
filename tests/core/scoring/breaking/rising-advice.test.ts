import { expect, it } from 'vitest';
import { firstBreakWords } from '../../../../src/core/result/breaking-words.ts';
import { sentence } from '../../../../src/core/result/sentences.ts';
import { risingAdvice } from '../../../../src/core/scoring/breaking/rising-advice.ts';
import { tempoOfBreak } from '../../../../src/core/scoring/breaking/tempo-of-break.ts';

const breaking = (...marks: number[]) => {
  const scores = marks.map((score, i) => ({ bpm: 100 + 10 * i, score, low: score - 4, high: score + 4 }));
  return {
    lines: marks.map((_, i) => i),
    played: marks.length,
    stoppedAt: null,
    dimensions: [{ id: 'evenness', ...tempoOfBreak(scores), scores }],
  };
};
const said = (...marks: number[]) => sentence(risingAdvice(breaking(...marks))!);

it('says to practise at the fastest tempo that surely holds', () => {
  expect(said(92, 90, 88, 20, 10)).toBe(
    'Practise where it still holds: at 120 BPM or a little below. What gives way first above it: evenness.',
  );
});

it('says to go further where nothing broke, and to begin slower where nothing held', () => {
  expect(said(92, 90, 88, 90)).toContain('Nothing broke up to 130 BPM.');
  expect(said(20, 15, 10, 5)).toContain('Next time begin at about 90 BPM.');
});

it('says to practise the fastest tempo that was played whole where the take broke off at the next', () => {
  const off = { ...breaking(92, 90, 88, 90), stoppedAt: 140 };
  expect(sentence(risingAdvice(off)!)).toBe(
    'Practise at 130 BPM, the fastest that was played whole, or a little below, before you try 140 again.',
  );
  expect(firstBreakWords(off)).toBe('Nothing broke up to 130 BPM; the take breaks off at 140.');
});

it('says nothing where too few tempos were played', () => {
  expect(risingAdvice({ ...breaking(90), dimensions: [] })).toBeNull();
});
