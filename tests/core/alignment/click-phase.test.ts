import { describe, expect, it } from 'vitest';
import { clickFits, clickPhase, clicksOnBeat } from '../../../src/core/alignment/click-phase.ts';
import { mainSlots } from '../../../src/core/alignment/main-slots.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { line, sheetOf } from './made-sheet.ts';

const click = { times: Array.from({ length: 20 }, (_, i) => 0.5 * i), period: 0.5, levelDb: -20 };

describe('clicksOnBeat', () => {
  it('knows clicks on the beat, its parts and every other beat', () => {
    expect(clicksOnBeat(click, 0.5, 3)).toBe(1);
    expect(clicksOnBeat(click, 1.01, 3)).toBe(2);
    expect(clicksOnBeat(click, 1.5, 3)).toBe(3);
    expect(clicksOnBeat(click, 0.25, 3)).toBe(0.5);
    expect(clicksOnBeat(click, 0.57, 3)).toBeNull();
  });
});

describe('clickPhase', () => {
  const sheet = sheetOf(line('>RLR >LRL'));
  const main = mainSlots(layOut(sheet), sheet);
  const price = clickPhase(click, main, Float64Array.of(1, 1 + 0.5 / 3, 1.25));
  it("favours a start at the slot's own place in the beat", () => {
    expect(price(0, 0, 0.5)).toBeGreaterThan(1);
    expect(price(1, 0, 0.5)).toBeLessThan(-2);
    expect(price(1, 1, 0.5)).toBeGreaterThan(1);
  });

  it('says nothing where the click keeps another tempo', () => {
    expect(price(1, 0, 0.57)).toBe(0);
  });

  // The logarithm of 98 % of a normal density of SD 0.07 beats and 2 % of a level one, against a click's own places.
  it.each([
    [1, 0, 0.5, 0],
    [1.03, 0, 0.5, 0.06],
    [1.05, 0, 1, 0.05],
    [1.05 + 1 / 3, 1, 1, 0.05],
    [1.1, 0, 1.5, 0.1 / 1.5],
  ])('prices a start at %f s on slot %i, %f s a beat, by %f beats', (time, slot, period, off) => {
    const density = Math.exp(-0.5 * (off / 0.07) ** 2) / (0.07 * Math.sqrt(2 * Math.PI));
    const perBeat = period / click.period;
    const own = clickPhase(click, main, Float64Array.of(time))(0, slot, period);
    expect(own).toBeCloseTo(Math.log((0.98 * density) / perBeat + 0.02), 9);
  });

  it('needs two clicks, and one on every beat', () => {
    const of = (times: readonly number[], period: number) =>
      clickPhase({ ...click, times }, main, Float64Array.of(1))(0, 0, period);
    expect(of([1], 0.5)).toBe(0);
    expect(of([1, 1.5], 0.5)).toBeGreaterThan(1);
    expect(of(click.times, 0.25)).toBe(0);
  });
});

describe('clickFits', () => {
  const segment = { firstSlot: 0, lastSlot: 5, state: 'graded', leadSwapped: false, origin: 1 } as const;
  it('goes by the graded runs', () => {
    expect(clickFits(click, [{ ...segment, period: 0.503 }])).toBe(true);
    expect(clickFits(click, [{ ...segment, period: 0.54 }])).toBe(false);
    expect(clickFits(click, [])).toBe(false);
    const [fits, off] = [
      { ...segment, period: 0.503 },
      { ...segment, period: 0.54 },
    ];
    expect(clickFits(click, [fits, off])).toBe(true);
    expect(clickFits(click, [fits, off, off])).toBe(false);
    expect(clickFits(click, [fits, { ...off, state: 'abandoned' }, { ...off, state: 'abandoned' }])).toBe(
      true,
    );
    expect(clickFits(click, [off, { ...fits, state: 'abandoned' }])).toBe(false);
  });
});
