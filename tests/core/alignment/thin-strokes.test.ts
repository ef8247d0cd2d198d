import { describe, expect, it } from 'vitest';
import { mainSlots } from '../../../src/core/alignment/main-slots.ts';
import { thinStrokes } from '../../../src/core/alignment/thin-strokes.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { line, sheetOf } from './made-sheet.ts';

const mainOf = (notation: string, bpm: number | null) => {
  const sheet = sheetOf(line(notation, { bpm }));
  return mainSlots(layOut(sheet), sheet);
};

describe('thinStrokes', () => {
  it('keeps the loudest of strokes close together: not the bounce, not the grace note', () => {
    const times = Float64Array.of(1, 1.03, 1.2, 1.36, 1.4);
    const levels = Float64Array.of(-20, -30, -20, -32, -18);
    const { kept, next, spacing } = thinStrokes(times, levels, mainOf('>RLR >LRL', 100));
    expect([...kept]).toEqual([0, 2, 4]);
    expect([...next]).toEqual([1, 1, 2, 2, 3]);
    expect(spacing).toBeCloseTo(0.2, 9);
  });

  it('goes by the lines that a tempo is asked for, and by 0.05 s where there is none', () => {
    const mixed = sheetOf(line('RLR', { bpm: 100 }), line('RLR', { bpm: null }), line('RLR', { bpm: 100 }));
    // A third of 0.6 s: up to 0.07 s apart.
    const times = Float64Array.of(0, 0.06, 0.3, 0.375, 0.6);
    const levels = Float64Array.of(-20, -30, -20, -30, -20);
    expect([...thinStrokes(times, levels, mainSlots(layOut(mixed), mixed)).kept]).toEqual([0, 2, 3, 4]);
    const free = Float64Array.of(0, 0.045, 0.3, 0.355);
    expect([...thinStrokes(free, levels, mainOf('RLR', null)).kept]).toEqual([0, 2, 3]);
  });

  it('keeps the first of equals, and has the middle interval', () => {
    const times = Float64Array.of(0, 0.03, 0.25, 0.5, 0.8);
    const { kept, spacing } = thinStrokes(times, new Float64Array(5), mainOf('>RLR >LRL', 100));
    expect([...kept]).toEqual([0, 2, 3, 4]);
    expect(spacing).toBeCloseTo(0.25, 9);
    expect(thinStrokes(times.slice(0, 1), new Float64Array(1), mainOf('RLR', 100)).spacing).toBe(0.2);
  });

  it('keeps fast strokes of a fast sheet', () => {
    const times = Float64Array.from({ length: 12 }, (_, i) => 0.05 * i);
    const { kept } = thinStrokes(times, new Float64Array(12), mainOf('RLRLRL RLRLRL', 200));
    expect(kept).toHaveLength(12);
  });
});
