import { describe, expect, it } from 'vitest';
import { mainSlots } from '../../../src/core/alignment/main-slots.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { line, sheetOf } from './made-sheet.ts';

const sheet = sheetOf(
  line('>lRLR L-L RL R', { repeats: 2, beatsInBar: 2, restBeats: 3 }),
  line('RL', { bpm: null }),
);
const slots = layOut(sheet);
const main = mainSlots(slots, sheet);

describe('mainSlots', () => {
  it('leaves grace notes out and counts them with their main stroke', () => {
    expect(main.length).toBe(18);
    expect([...main.graces].filter((count) => count > 0)).toEqual([1, 1]);
    expect(main.slot[0]).toBe(1);
    expect(slots[main.slot[0]!]!.grace).toBe(false);
  });

  it('marks bars with where they begin and end', () => {
    expect(main.bars.map(({ first, beginBeat, endBeat }) => [first, beginBeat, endBeat])).toEqual([
      [0, 0, 2],
      [5, 2, 4],
      [8, 4, 6],
      [13, 6, 8],
      [16, 11, 12],
    ]);
    expect(main.bars.map(({ startsRepeat, startsLine }) => [startsRepeat, startsLine])).toEqual([
      [true, true],
      [false, false],
      [true, false],
      [false, false],
      [true, true],
    ]);
    expect(main.lineBar).toEqual([0, 4]);
    expect(main.lastRepeatBar).toEqual([2, 4]);
  });

  it('gives every stroke the space to its nearest neighbour in the line', () => {
    expect([...main.room.slice(0, 8)].map((room) => room.toFixed(3))).toEqual([
      '0.333',
      '0.333',
      '0.333',
      '0.333',
      '0.333',
      '0.333',
      '0.500',
      '0.500',
    ]);
    expect(main.room[7]).toBeGreaterThanOrEqual(main.space[7]!);
  });

  it('gives equal signatures to equal rhythms ahead within one line', () => {
    const one = sheetOf(line('>RLR >LRL >RLR >LRL', { repeats: 8 }));
    const even = mainSlots(layOut(one), one);
    expect(even.signature[0]).toBe(even.signature[1]);
    expect(even.signature[0]).not.toBe(even.signature[even.length - 2]);
    expect(main.signature[0]).not.toBe(main.signature[16]);
  });

  it('knows the tempos asked and an empty sheet', () => {
    expect(main.asked).toEqual([60 / 110, null]);
    expect(mainSlots([], sheetOf()).length).toBe(0);
  });
});
