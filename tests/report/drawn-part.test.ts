import { describe, expect, it } from 'vitest';
import { chartList } from '../../src/charts/chart-list.ts';
import { plainLook } from '../../src/charts/look.ts';
import { strokeWords } from '../../src/charts/stroke-words.ts';
import { tempoCurve } from '../../src/charts/tempo-curve.ts';
import { pointsShown } from '../../src/charts/thin-out.ts';
import { drawnPart } from '../../src/report/drawn-part.ts';
import { smallTake } from '../charts/small-take.ts';
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

  it('holds as many points of the tempo as the picture shows, the same ones', () => {
    const long = smallTake(1000);
    const time = long.strokes.time;
    const bpm = time.map((_, i) => 100 + Math.sin(i / 7));
    const take = { ...long, tempo: { time, bpm, segment: time.map(() => 0) } };
    const part = drawnPart(take);
    expect(part.tempo.time).toHaveLength(pointsShown);
    const [drawn, whole] = [part, take].map((one) => tempoCurve(one, plainLook)!.data.datasets[0]!.data);
    expect(drawn).toEqual(whole);
  });
});
