import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { parseNotation } from '../../../src/core/exercise/parse-notation.ts';
import type { SheetLine } from '../../../src/core/exercise/sheet.ts';
import { writeNotation } from '../../../src/core/exercise/write-notation.ts';
import { anyBeats } from './beats-arbitrary.ts';

function line(notation: string, changes: Partial<SheetLine> = {}): SheetLine {
  const parsed = parseNotation(notation);
  if (!parsed.ok) throw new Error(parsed.fault.code);
  return {
    id: 'a-line',
    label: 'A line',
    notation,
    beats: parsed.beats,
    repeats: 1,
    bpm: null,
    beatsInBar: 4,
    restBeats: 0,
    leadChange: false,
    ratioBand: null,
    ...changes,
  };
}

const sheet = (...lines: SheetLine[]) => ({ title: 'A sheet', lines });

describe('layOut', () => {
  it('lays out the example of its comment', () => {
    const slots = layOut(sheet(line('>RLR >LRL')));
    expect(slots.map((slot) => slot.hand).join('')).toBe('RLRLRL');
    expect(slots.map((slot) => slot.accent)).toEqual([true, false, false, true, false, false]);
    expect(slots.map((slot) => slot.partial)).toEqual([1, 2, 3, 1, 2, 3]);
    expect(slots.map((slot) => slot.beat)).toEqual([0, 0, 0, 1, 1, 1]);
    expect(slots.map((slot) => slot.index)).toEqual([0, 1, 2, 3, 4, 5]);
  });

  it('runs repeats on without a gap and rests after the last one', () => {
    const slots = layOut(
      sheet(line('R L', { repeats: 2, restBeats: 3, bpm: 60 }), line('R', { bpm: 120, repeats: 2 })),
    );
    expect(slots.map((slot) => slot.beatTime)).toEqual([0, 1, 2, 3, 7, 8]);
    expect(slots.map((slot) => slot.time)).toEqual([0, 1, 2, 3, 7, 7.5]);
    expect(slots.map((slot) => slot.position)).toEqual([0, 1, 0, 1, 0, 0]);
    expect(slots.map((slot) => [slot.line, slot.repeat])).toEqual([
      [0, 0],
      [0, 0],
      [0, 1],
      [0, 1],
      [1, 0],
      [1, 1],
    ]);
  });

  it('gives no times from the first open tempo on', () => {
    const slots = layOut(sheet(line('R', { bpm: 60 }), line('R'), line('R', { bpm: 60 })));
    expect(slots.map((slot) => slot.time)).toEqual([0, null, null]);
    expect(slots.map((slot) => slot.beatTime)).toEqual([0, 1, 2]);
  });

  it('changes hands over on every second repeat, grace notes too', () => {
    const slots = layOut(sheet(line('lRL-', { repeats: 3, leadChange: true })));
    expect(slots.map((slot) => (slot.grace ? slot.hand.toLowerCase() : slot.hand)).join('')).toBe(
      'lRLrLRlRL',
    );
  });

  it('puts grace notes before their main stroke, at its position, without its accent or buzz', () => {
    const slots = layOut(sheet(line('RL ll>Rz', { bpm: 90 })));
    expect(slots.slice(2).map(({ hand, grace, accent, buzz }) => ({ hand, grace, accent, buzz }))).toEqual([
      { hand: 'L', grace: true, accent: false, buzz: false },
      { hand: 'L', grace: true, accent: false, buzz: false },
      { hand: 'R', grace: false, accent: true, buzz: true },
    ]);
    expect(new Set(slots.slice(2).map((slot) => slot.position))).toEqual(new Set([1]));
    expect(new Set(slots.slice(2).map((slot) => slot.time))).toEqual(new Set([60 / 90]));
  });

  it('counts bars by the bar lines, and by the beats in a bar where there are none', () => {
    expect(layOut(sheet(line('| R L | R L R | R'))).map((slot) => slot.bar)).toEqual([0, 0, 1, 1, 1, 2]);
    expect(layOut(sheet(line('R L R L R', { beatsInBar: 3 }))).map((slot) => slot.bar)).toEqual([
      0, 0, 0, 1, 1,
    ]);
  });

  it('gives every written stroke and grace note one slot a repeat, in order of time', () => {
    fc.assert(
      fc.property(
        anyBeats,
        fc.integer({ min: 1, max: 5 }),
        fc.integer({ min: 20, max: 300 }),
        (beats, repeats, bpm) => {
          const slots = layOut(sheet(line(writeNotation(beats), { repeats, bpm }), line('R', { bpm })));
          const letters = writeNotation(beats).replace(/[^RLrl]/g, '').length;
          expect(slots).toHaveLength(letters * repeats + 1);
          slots.forEach((slot, index) => {
            expect(slot.index).toBe(index);
            expect(slot.time).toBeCloseTo((slot.beatTime * 60) / bpm, 9);
            if (index > 0) expect(slot.beatTime).toBeGreaterThanOrEqual(slots[index - 1]!.beatTime);
          });
          expect(slots.at(-1)!.beatTime).toBe(beats.length * repeats);
        },
      ),
    );
  });
});
