import { describe, expect, it } from 'vitest';
import { clickFits, clickPhase, clicksOnBeat } from '../../../src/core/alignment/click-phase.ts';
import { mainSlots } from '../../../src/core/alignment/main-slots.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { line, sheetOf } from './simulated-take.ts';

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
});

describe('clickFits', () => {
  const segment = { firstSlot: 0, lastSlot: 5, state: 'graded', leadSwapped: false, origin: 1 } as const;
  it('goes by the graded runs', () => {
    expect(clickFits(click, [{ ...segment, period: 0.503 }])).toBe(true);
    expect(clickFits(click, [{ ...segment, period: 0.54 }])).toBe(false);
    expect(clickFits(click, [])).toBe(false);
  });
});
