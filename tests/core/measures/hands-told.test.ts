import { describe, expect, it } from 'vitest';
import type { Began } from '../../../src/core/alignment/alignment.ts';
import { takeWithFaults } from './completeness.ts';
import { machine, simulatedPerformance } from './simulated-performance.ts';

const open = (take: { strokes: readonly { slot: { index: number }; hand: string | null }[] }) =>
  take.strokes.filter((s) => s.hand === null).map((s) => s.slot.index);

describe('slotsWithoutHand', () => {
  it('opens the hands of a hand-to-hand line from a missed stroke to its end', () => {
    const take = takeWithFaults({ missed: [90] });
    expect(open(take)).toEqual([91, 92, 93, 94, 95]);
    expect(take.hands).toBe('as-written');
  });
  it('opens them from the stroke after a doubled one', () => {
    expect(open(takeWithFaults({ doubledAfter: [92] }))).toEqual([93, 94, 95]);
    expect(open(takeWithFaults({ extraAfter: [93] }))).toEqual([94, 95]);
  });
  it('numbers doubts, so that each may have swapped or not', () => {
    const take = takeWithFaults({ missed: [60, 80] });
    expect(take.strokes.find((s) => s.slot.index === 70)!.doubt).toBe(1);
    expect(take.strokes.find((s) => s.slot.index === 90)!.doubt).toBe(2);
    expect(take.strokes.find((s) => s.slot.index === 10)!.doubt).toBeNull();
  });
  it('tells nothing of hands when most are open', () => {
    expect(takeWithFaults({ missed: [40] }).hands).toBe('not-told');
  });
  it('trusts stickings with doubles, and a new line', () => {
    const missing = (sheet: string) =>
      simulatedPerformance({
        sheet,
        seed: 1,
        player: machine,
        change: (a) => ({ ...a, matches: a.matches.filter((m) => m.slot !== 7), missed: [7] }),
      });
    expect(open(missing('tempo: 100\n>RRL >RRL; x4'))).toEqual([]);
    expect(open(missing('tempo: 100\n>RLR >LRL; x2\n>LRL >RLR; x2'))).toEqual([8, 9, 10, 11]);
  });
  it('opens them after a slip, up to the next line', () => {
    const cut = (sheet: string, began: Began) =>
      simulatedPerformance({
        sheet: `tempo: 100\n${sheet}`,
        seed: 1,
        player: machine,
        change: (a) => {
          const [whole] = a.segments;
          const segments = [
            { ...whole!, lastSlot: 6, began: 'start' as const },
            { ...whole!, firstSlot: 7, began },
          ];
          return { ...a, segments, matches: a.matches.map((m) => ({ ...m, segment: m.slot < 7 ? 0 : 1 })) };
        },
      });
    const twoLines = '>RLR >LRL; x2\n>LRL >RLR; x2';
    expect(open(cut(twoLines, 'slip'))).toEqual([7, 8, 9, 10, 11]);
    expect(open(cut(twoLines, 'pause'))).toEqual([]);
    expect(open(cut('>RRL >RRL; x4', 'slip'))).toEqual([]);
  });
  it('keeps hands of a faultless take', () => {
    expect(open(takeWithFaults({}))).toEqual([]);
  });
});
