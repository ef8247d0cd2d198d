import { describe, expect, it } from 'vitest';
import type { Alignment } from '../../../src/core/alignment/alignment.ts';
import { machine, simulatedPerformance } from './simulated-performance.ts';

const play = (sheet: string, change?: (alignment: Alignment) => Alignment) =>
  simulatedPerformance({ sheet, seed: 1, player: machine, ...(change ? { change } : {}) });

describe('performanceOf', () => {
  it('counts beats on through repeats', () => {
    const take = play('tempo: 100\n>RLR >LRL; x3');
    expect(take.strokes.map((s) => s.position)).toEqual(
      Array.from({ length: 18 }, (_, i) => expect.closeTo(i / 3, 9)),
    );
    expect(new Set(take.strokes.map((s) => s.stretch)).size).toBe(1);
  });

  it('starts a stretch after a long rest and at a new tempo, not at a new line alone', () => {
    const stretches = (sheet: string) => play(sheet).strokes.map((s) => s.stretch);
    expect(new Set(stretches('tempo: 100\nRLR; x4; rest: 1\nLRL; x4'))).toEqual(new Set([0]));
    expect(new Set(stretches('tempo: 100\nRLR; x4; rest: 4\nLRL; x4'))).toEqual(new Set([0, 1]));
    expect(new Set(stretches('tempo: 100\nRLR; x4\nLRL; x4; tempo: 104'))).toEqual(new Set([0, 1]));
  });

  it('leaves abandoned runs out', () => {
    const take = play('tempo: 100\n>RLR >LRL; x4', (alignment) => {
      const [run] = alignment.segments;
      return {
        ...alignment,
        segments: [
          { ...run!, lastSlot: 9, state: 'abandoned' },
          { ...run!, firstSlot: 10 },
        ],
        matches: alignment.matches.map((m) => ({ ...m, segment: m.slot < 10 ? 0 : 1 })),
      };
    });
    expect(take.strokes.map((s) => s.slot.index)[0]).toBe(10);
  });

  it('swaps hands where the player led with the other', () => {
    const take = play('tempo: 100\nRLL', (alignment) => ({
      ...alignment,
      segments: alignment.segments.map((s) => ({ ...s, leadSwapped: true })),
    }));
    expect(take.strokes.map((s) => s.hand).join('')).toBe('LRR');
  });

  it('leaves grace notes out', () => {
    const take = play('tempo: 100\nlR>LR rL>RL; x4');
    expect(take.strokes.map((s) => s.slot.grace)).toEqual(new Array(24).fill(false));
    expect(take.times).toHaveLength(32);
  });
});
