import { describe, expect, it } from 'vitest';
import { chartList } from '../../src/charts/chart-list.ts';
import { plainLook } from '../../src/charts/look.ts';
import { drawnPart } from '../../src/report/drawn-part.ts';
import { embedJson } from '../../src/report/embed-json.ts';
import { type PackedPart, packPart, unpackPart } from '../../src/report/packed-part.ts';
import { smallTake } from '../charts/small-take.ts';
import { walkingTake } from '../charts/walking-take.ts';
import { exampleResult } from '../support/example-result.ts';

const throughText = (result: Parameters<typeof drawnPart>[0]) =>
  unpackPart(JSON.parse(embedJson(packPart(drawnPart(result)))) as PackedPart);

const figure = /\d+(\.\d+)?/g;

describe('packPart', () => {
  it.each([
    ['a walking accent', walkingTake()],
    ['a missed and an extra stroke', exampleResult()],
  ])("keeps the words of every picture's table, and its figures to a tenth: %s", (_, result) => {
    const part = throughText(result);
    for (const { table, draw } of chartList) {
      expect(draw(part, plainLook) === null).toBe(draw(result, plainLook) === null);
      if (draw(result, plainLook) === null) continue;
      const [packed, whole] = [table(part), table(result)].map(({ rows }) => rows.flat().join(' | '));
      expect(packed!.replace(figure, '#')).toBe(whole!.replace(figure, '#'));
      const figures = packed!.match(figure) ?? [];
      whole!.match(figure)?.forEach((value, i) => {
        expect(Math.abs(Number(figures[i]) - Number(value))).toBeLessThan(0.11);
      });
    }
  });

  it('keeps times to a tenth of a millisecond and every whole column as it was', () => {
    const result = exampleResult();
    const { strokes, slots, tempo } = throughText(result);
    strokes.time.forEach((time, i) => {
      expect(Math.abs(time - result.strokes.time[i]!)).toBeLessThanOrEqual(0.000_05 + 1e-9);
    });
    tempo.bpm.forEach((bpm, i) => {
      expect(Math.abs(bpm - result.tempo.bpm[i]!)).toBeLessThanOrEqual(0.005 + 1e-9);
    });
    expect({ ...slots, hand: result.slots.hand, buzz: result.slots.buzz, position: [] }).toEqual({
      ...result.slots,
      position: [],
    });
    slots.position.forEach((at, i) => {
      expect(at).toBeCloseTo(result.slots.position[i]!, 12);
    });
    for (const column of ['role', 'slot', 'hand'] as const)
      expect(strokes[column]).toEqual(result.strokes[column]);
  });

  it('is less than half as large for a take of some length', () => {
    const part = drawnPart(smallTake(200));
    expect(embedJson(packPart(part)).length).toBeLessThan(0.5 * embedJson(part).length);
  });
});
