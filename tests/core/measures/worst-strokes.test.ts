import { expect, it } from 'vitest';
import { worstStrokes } from '../../../src/core/measures/worst-strokes.ts';
import { plain, takeOfLevels } from './made-levels.ts';

const { strokes } = takeOfLevels('>RLR >LRL; x8', plain);

it('puts the worst first, at most twelve, and none that is not bad', () => {
  expect(worstStrokes(strokes, (_, i) => i - 45)).toEqual([47, 46]);
  expect(worstStrokes(strokes, (_, i) => i)).toHaveLength(12);
});

it("keeps the order of time where the last digits alone differ, which are the engine's", () => {
  const bad = new Map([
    [7, 0.3],
    [3, 0.1 + 0.2],
    [5, 0.3 * (1 - 4e-16)],
    [9, 0.300001],
  ]);
  expect(worstStrokes(strokes, (_, i) => bad.get(i) ?? 0)).toEqual([9, 3, 5, 7]);
});
