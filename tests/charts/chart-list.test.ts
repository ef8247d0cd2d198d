import { describe, expect, it } from 'vitest';
import { chartList } from '../../src/charts/chart-list.ts';
import { plainLook } from '../../src/charts/look.ts';
import { darkPalette } from '../../src/charts/palette.ts';
import { exampleResult } from '../support/example-result.ts';
import { smallTake } from './small-take.ts';

/** A configuration without its functions. */
const asData = (value: unknown) => JSON.parse(JSON.stringify(value)) as unknown;

describe.each(chartList)('$id', (chart) => {
  const result = smallTake(4);

  it('asks a question and answers it in words and figures', () => {
    expect(chart.question).toMatch(/^[A-Z].+\?$/);
    expect(chart.text(result)).toMatch(/\d/);
    expect(chart.text(result)).not.toMatch(/NaN|undefined|null/);
    const { head, rows } = chart.table(result);
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) expect(row).toHaveLength(head.length);
    expect(rows.flat().join()).not.toMatch(/NaN|undefined|null/);
  });

  it('draws the same configuration as before (golden: a record of what is drawn, not a proof)', () => {
    expect(asData(chart.draw(result, plainLook))).toMatchSnapshot();
  });

  it('takes its colours from the look alone', () => {
    const text = JSON.stringify(chart.draw(result, { ...plainLook, palette: darkPalette }));
    const known = new Set<string>(Object.values(darkPalette));
    expect((text.match(/#[0-9a-f]{6}/g) ?? []).filter((colour) => !known.has(colour))).toEqual([]);
  });

  it('draws a take of 20,000 strokes with few points and soon', () => {
    const long = smallTake(6667, {
      tempo: {
        time: Array.from({ length: 20_000 }, (_, i) => i / 5),
        bpm: Array.from({ length: 20_000 }, (_, i) => 100 + Math.sin(i)),
        segment: Array.from({ length: 20_000 }, () => 0),
      },
    });
    const start = performance.now();
    const drawn = chart.draw(long, plainLook)!;
    expect(performance.now() - start).toBeLessThan(2000);
    const points = drawn.data.datasets.reduce((sum, dataset) => sum + dataset.data.length, 0);
    expect(points).toBeLessThan(6000);
  });

  it('draws nothing where there is nothing', () => {
    const empty = smallTake(0, { scores: null, tempo: { time: [], bpm: [], segment: [] }, segments: [] });
    expect(chart.draw(empty, plainLook)).toBeNull();
  });

  it('draws takes without accents, without taps, without told hands, with one stroke', () => {
    const one = smallTake(1);
    const accents = (all: boolean) => ({ ...one.slots, accent: one.slots.accent.map(() => all) });
    const single = one.strokes.role.map((role, i) => (i === 0 ? role : ('outside' as const)));
    const takes = [
      smallTake(2, { hands: 'not-told' }),
      { ...one, slots: accents(true) },
      { ...one, slots: accents(false) },
      { ...one, strokes: { ...one.strokes, role: single } },
    ];
    for (const take of takes) {
      expect(chart.draw(take, plainLook)).not.toBeNull();
      expect(chart.text(take)).not.toMatch(/NaN|undefined|null/);
    }
  });
});

describe('chartList', () => {
  it('has an id of its own for every chart, and draws each of the example take', () => {
    expect(new Set(chartList.map((chart) => chart.id)).size).toBe(chartList.length);
    const { scores } = smallTake(1);
    for (const chart of chartList) expect(chart.draw(exampleResult({ scores }), plainLook)).not.toBeNull();
  });
});
