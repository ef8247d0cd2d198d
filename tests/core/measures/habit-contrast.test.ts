import { describe, expect, it } from 'vitest';
import {
  changeColumn,
  handColumn,
  partialColumn,
  placeColumn,
} from '../../../src/core/measures/design-columns.ts';
import { canTell } from '../../../src/core/measures/habit-contrast.ts';
import { machine, simulatedPerformance } from './simulated-performance.ts';

const told = (sheet: string) => {
  const timing = simulatedPerformance({
    sheet: `tempo: 100\n${sheet}`,
    seed: 1,
    player: { ...machine, motor: 0.005 },
  }).timing!;
  const can = (id: string) => canTell(timing, new Map([[id, 1]]));
  const partial = new Map([1, 2, 3].map((p) => [partialColumn(3, p), (p === 1 ? 1 : 0) - 1 / 3]));
  return { partial: canTell(timing, partial), hand: can(handColumn), change: can(changeColumn) };
};

describe('canTell', () => {
  // Which terms a sticking confounds follows from counting: in RRR LLL a change of hands is always on partial 1, in
  // RLR LRL every interval changes hands, in RRL the hand goes with the partial.
  it.each([
    ['RLR LRL; x12', { partial: true, hand: true, change: false }],
    ['RRR LLL; x12', { partial: false, hand: true, change: false }],
    ['RRL RRL; x12', { partial: false, hand: false, change: false }],
    ['RRL LRR LLR RLL; x6', { partial: true, hand: true, change: true }],
  ])('tells in %s what can be told', (sheet, want) => expect(told(sheet)).toEqual(want));

  it('tells accents from partials only where accents move', () => {
    const can = (sheet: string) => {
      const take = simulatedPerformance({
        sheet: `tempo: 100\n${sheet}`,
        seed: 1,
        player: { ...machine, motor: 0.005 },
      });
      const on = new Map([
        [placeColumn('on'), 1],
        [placeColumn('before'), -0.5],
        [placeColumn('after'), -0.5],
      ]);
      return canTell(take.timing!, on);
    };
    expect(can('>RLR >LRL; x12')).toBe(false);
    expect(can('>RLR >LRL; x8\nR>LR L>RL; x8\nRL>R LR>L; x8')).toBe(true);
  });
});
