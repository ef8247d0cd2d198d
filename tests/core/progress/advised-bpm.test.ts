import { expect, it } from 'vitest';
import { advisedBpm } from '../../../src/core/progress/advised-bpm.ts';
import { startTempo, tempoAdvice } from '../../../src/core/scoring/tempo-advice.ts';

const scores = (evenness: number, dynamics: number) => ({
  dimensions: [
    { id: 'evenness', score: { score: evenness } },
    { id: 'dynamics', score: { score: dynamics } },
  ],
});

it('is the tempo that advice comes to', () => {
  expect(advisedBpm({ code: 'tempo-up', facts: { bpm: 100, fromBpm: 104, toBpm: 106 } })).toBe(104);
  const advised = (evenness: number, dynamics: number, cleanOnAnotherDay = false) =>
    advisedBpm(tempoAdvice({ scores: scores(evenness, dynamics), bpm: 120, cleanOnAnotherDay })!);
  expect(advised(95, 95, true)).toBe(124); // up by 4 to 6
  expect(advised(95, 95)).toBe(120); // once more, on another day
  expect(advised(95, 70)).toBe(120); // stay
  expect(advised(40, 40)).toBe(108); // a tenth down
  expect(advisedBpm(startTempo({ cleanestBpm: 120 }))).toBe(102); // 15 % below the cleanest
});

it('is none where discomfort stops advice', () => {
  const facts = { scores: scores(95, 95), bpm: 120, discomfort: true };
  expect(advisedBpm(tempoAdvice(facts)!)).toBeNull();
});
