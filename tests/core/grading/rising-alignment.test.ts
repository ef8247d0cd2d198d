import { describe, expect, it } from 'vitest';
import { alignTake } from '../../../src/core/alignment/align-take.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { risingAlignment } from '../../../src/core/grading/rising-alignment.ts';
import { noteHearing } from '../../../src/core/onsets/note-hearing.ts';
import { playRising, risingExercise } from '../../support/rising-notes.ts';

const sheet = risingExercise({ from: 100, to: 160, step: 10 }, 8);
const slots = layOut(sheet);

const question = (worstAt: number, seed: number) => {
  const scatter = (bpm: number) => (2 / bpm) * (bpm / worstAt) ** 4;
  const strokes = noteHearing(playRising(sheet, { scatter }, seed).notes).sounds;
  return { slots, sheet, strokes, click: null };
};

describe('risingAlignment', () => {
  it("changes nothing where every run lies at its line's tempo", () => {
    const clean = question(400, 1);
    expect(risingAlignment(clean)).toEqual(alignTake(clean));
  });

  it('lets the tempos decide which line a take began with', () => {
    for (const seed of [2, 3, 4]) {
      const { segments } = risingAlignment(question(112, seed));
      expect([seed, segments[0]!.firstSlot]).toEqual([seed, 0]);
      expect(60 / segments[0]!.period).toBeCloseTo(100, 0);
    }
  });
});
