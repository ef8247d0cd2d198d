import { describe, expect, it } from 'vitest';
import { chartList } from '../../src/charts/chart-list.ts';
import { plainLook } from '../../src/charts/look.ts';
import { darkPalette } from '../../src/charts/palette.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { smallTake } from './small-take.ts';
import { walkingTake } from './walking-take.ts';

/** A configuration without its functions. */
const asData = (value: unknown) => JSON.parse(JSON.stringify(value)) as unknown;

/** Pictures that a take of one line with its accent on one partial has nothing for. */
const leftOut = ['tap-neighbours'];

describe.each(chartList)('$id', (chart) => {
  const result = walkingTake();

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
      measures: result.measures,
      tempo: {
        time: Array.from({ length: 20_000 }, (_, i) => i / 5),
        bpm: Array.from({ length: 20_000 }, (_, i) => 100 + Math.sin(i)),
        segment: Array.from({ length: 20_000 }, () => 0),
      },
    });
    const start = performance.now();
    const drawn = chart.draw(long, plainLook);
    expect(performance.now() - start).toBeLessThan(2000);
    if (drawn === null) return expect(leftOut).toContain(chart.id);
    const points = drawn.data.datasets.reduce((sum, dataset) => sum + dataset.data.length, 0);
    expect(points).toBeLessThan(6000);
  });

  it('draws nothing where there is nothing', () => {
    const empty = smallTake(0, {
      measures: [],
      scores: null,
      tempo: { time: [], bpm: [], segment: [] },
      segments: [],
    });
    expect(chart.draw(empty, plainLook)).toBeNull();
  });

  it('draws or leaves out takes without accents, without taps, without told hands, with one stroke', () => {
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
      const drawn = chart.draw(take, plainLook);
      if (drawn === null) continue;
      expect(drawn.data.datasets.some((dataset) => dataset.data.length > 0)).toBe(true);
      expect(chart.table(take).rows.length).toBeGreaterThan(0);
      expect(chart.text(take)).not.toMatch(/NaN|undefined|null/);
    }
  });
});

describe('chartList', () => {
  it('has an id of its own for every chart, and draws each of a take that has everything', () => {
    expect(new Set(chartList.map((chart) => chart.id)).size).toBe(chartList.length);
    for (const chart of chartList) expect(chart.draw(walkingTake(), plainLook)).not.toBeNull();
  });

  it('says of every picture what a take must hold for it', () => {
    for (const { needs } of chartList) expect(needs).toMatch(/^[a-z].{5,}[^.]$/);
  });

  it("leaves out what can't be told", () => {
    const drawnOf = (result: TakeResult) =>
      chartList.filter((chart) => chart.draw(result, plainLook) !== null).map(({ id }) => id);
    const whole = drawnOf(walkingTake());
    const missing = (changes: Partial<TakeResult>) => {
      const kept = drawnOf(walkingTake(changes));
      return whole.filter((id) => !kept.includes(id));
    };
    expect(missing({ hands: 'not-told' })).toEqual(['hand-clouds']);
    expect(missing({ measures: [] })).toEqual(['accent-bend']);
    expect(missing({ scores: null })).toEqual(['score-overview']);
    const { slots } = walkingTake();
    const accent = slots.accent.map(() => false);
    expect(missing({ slots: { ...slots, accent } })).toEqual(['tap-neighbours', 'ratio-course']);
  });
});
