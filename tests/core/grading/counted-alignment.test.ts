import { describe, expect, it } from 'vitest';
import type { AlignQuestion } from '../../../src/core/alignment/align-take.ts';
import { alignTake } from '../../../src/core/alignment/align-take.ts';
import type { Alignment } from '../../../src/core/alignment/alignment.ts';
import { countedAlignment } from '../../../src/core/grading/counted-alignment.ts';
import { performanceOf } from '../../../src/core/measures/performance.ts';
import { line, sheetOf } from '../alignment/made-sheet.ts';
import { simulateTake } from '../alignment/simulated-take.ts';

/** 96 strokes of a line accented on the first partial, heard with the accents `by` partials late. */
function question(seed: number, by: number, left: readonly number[] = []): AlignQuestion {
  const sheet = sheetOf(line('>RLR >LRL >RLR >LRL', { repeats: 8 }));
  const take = simulateTake({ sheet, seed, click: false });
  const strokes = take.strokes.flatMap((stroke, i) => {
    const { slot } = take.truth[i]!;
    const change = Number(take.slots[(slot - by + 96) % 96]!.accent) - Number(take.slots[slot]!.accent);
    return left.includes(slot) ? [] : [{ ...stroke, levelDb: stroke.levelDb + 14 * change }];
  });
  return { ...take, strokes };
}

function both(asked: AlignQuestion): { readonly byLevels: Alignment; readonly counted: Alignment } {
  const byLevels = alignTake(asked);
  const perform = (alignment: Alignment) => performanceOf({ ...asked, alignment });
  return { byLevels, counted: countedAlignment(asked, byLevels, perform) };
}

describe('countedAlignment', () => {
  it.each([1, -1])(
    'puts every stroke on its slot where accents come %i partial late from the start',
    (by) => {
      for (const seed of [1, 2, 3]) {
        const { byLevels, counted } = both(question(seed, by));
        expect(byLevels.matches.length).toBeLessThan(96);
        expect(counted.matches.map(({ slot }) => slot)).toEqual(Array.from({ length: 96 }, (_, i) => i));
      }
    },
  );

  it('takes a recording that began in the middle as its levels say', () => {
    for (const seed of [1, 2, 3]) {
      const asked = question(seed, 0, [0, 1]);
      const begun = asked.strokes[0]!.time - 0.05;
      const strokes = asked.strokes.map((stroke) => ({ ...stroke, time: stroke.time - begun }));
      const { byLevels, counted } = both({ ...asked, strokes });
      expect(counted).toBe(byLevels);
      expect(counted.matches.every(({ stroke, slot }) => (slot - stroke + 96) % 3 === 2)).toBe(true);
    }
  });

  it.each([
    ['as written', []],
    ['without its first stroke', [0]],
    ['without its last two strokes', [94, 95]],
    ['without its first two strokes and another', [0, 1, 40]],
    ['without its first stroke and another', [0, 40]],
  ])('leaves a take played %s as it is', (_, left) => {
    for (const seed of [1, 2, 3]) {
      const { byLevels, counted } = both(question(seed, 0, left));
      expect(counted).toBe(byLevels);
    }
  });
});
