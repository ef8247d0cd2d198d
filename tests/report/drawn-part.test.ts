import { describe, expect, it } from 'vitest';
import { chartList } from '../../src/charts/chart-list.ts';
import { plainLook } from '../../src/charts/look.ts';
import { strokeWords } from '../../src/charts/stroke-words.ts';
import { drawnPart } from '../../src/report/drawn-part.ts';
import { embedJson } from '../../src/report/embed-json.ts';
import { smallTake } from '../charts/small-take.ts';

describe('drawnPart', () => {
  const result = smallTake(40);

  it('draws the same pictures and tells the same of every stroke as the whole result', () => {
    const part = drawnPart(result);
    for (const { draw } of chartList) {
      expect(JSON.stringify(draw(part, plainLook))).toBe(JSON.stringify(draw(result, plainLook)));
    }
    for (const i of result.strokes.time.keys()) expect(strokeWords(part, i)).toEqual(strokeWords(result, i));
  });

  it('is little more than half as large', () => {
    expect(embedJson(drawnPart(result)).length).toBeLessThan(0.6 * embedJson(result).length);
  });
});
