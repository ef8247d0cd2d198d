import { describe, expect, it } from 'vitest';
import { alignTake } from '../../../src/core/alignment/align-take.ts';
import { performanceOf } from '../../../src/core/measures/performance.ts';
import { turnedAccents } from '../../../src/core/measures/turned-accents.ts';
import { line, sheetOf } from '../alignment/made-sheet.ts';
import { simulateTake } from '../alignment/simulated-take.ts';
import { figureOf } from './coverage.ts';
import { plain, takeOfLevels } from './made-levels.ts';

const flip = 45;

/** A take of 96 strokes heard from onset and level alone; from a stroke on its accents lie `by` partials off. */
function turnedTake(seed: number, by: number, click: boolean) {
  const sheet = sheetOf(line('>RLR >LRL >RLR >LRL', { repeats: 8 }));
  const take = simulateTake({ sheet, seed, click });
  const strokes = take.strokes.map((stroke, i) => {
    const { slot } = take.truth[i]!;
    if (slot < flip) return stroke;
    const change = Number(take.slots[(slot - by + 96) % 96]!.accent) - Number(take.slots[slot]!.accent);
    return { ...stroke, levelDb: stroke.levelDb + 14 * change };
  });
  const alignment = alignTake({ ...take, strokes });
  return performanceOf({ ...take, strokes, alignment });
}

describe('turned-accents', () => {
  it.each([
    [1, false],
    [-1, false],
    [1, true],
    [-1, true],
  ])('are found by the whole way from strokes to figure: by %i, with a click: %j', (by, click) => {
    for (const seed of [1, 2, 3]) {
      const take = turnedTake(seed, by, click);
      const turns = 'accents' in take.accents ? take.accents.accents.turns : [];
      expect(turns.map((turn) => turn.by)).toEqual([by]);
      expect(Math.abs(take.strokes[turns[0]!.from]!.slot.index - flip)).toBeLessThanOrEqual(2);
      expect(turns[0]!.logLikelihood).toBeGreaterThan(40);
      const figure = figureOf(turnedAccents, take);
      expect(Math.abs(figure.value - (100 * (96 - flip)) / 96)).toBeLessThan(3);
      expect(figure.pointsAt).toHaveLength(1);
    }
  });

  it('are none in takes as written', () => {
    for (let seed = 1; seed <= 40; seed++) {
      expect(figureOf(turnedAccents, takeOfLevels('>RLR >LRL; x16', plain, { seed })).value).toBe(0);
    }
  });
});
