import { describe, expect, it } from 'vitest';
import { mainSlots } from '../../../src/core/alignment/main-slots.ts';
import { thinStrokes } from '../../../src/core/alignment/thin-strokes.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { line, sheetOf } from './simulated-take.ts';

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

  it('keeps fast strokes of a fast sheet', () => {
    const times = Float64Array.from({ length: 12 }, (_, i) => 0.05 * i);
    const { kept } = thinStrokes(times, new Float64Array(12), mainOf('RLRLRL RLRLRL', 200));
    expect(kept).toHaveLength(12);
  });
});
