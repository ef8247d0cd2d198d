import { describe, expect, it } from 'vitest';
import { chartList } from '../../src/charts/chart-list.ts';
import { plainLook } from '../../src/charts/look.ts';
import { strokeWords } from '../../src/charts/stroke-words.ts';
import { drawnPart } from '../../src/report/drawn-part.ts';
import { walkingTake } from '../charts/walking-take.ts';

describe('drawnPart', () => {
  const result = walkingTake();

  it('draws the same pictures and tells the same of every stroke as the whole result', () => {
    const part = drawnPart(result);
    for (const { draw } of chartList) {
      expect(JSON.stringify(draw(part, plainLook))).toBe(JSON.stringify(draw(result, plainLook)));
    }
    for (const i of result.strokes.time.keys()) expect(strokeWords(part, i)).toEqual(strokeWords(result, i));
  });
});
