import { describe, expect, it } from 'vitest';
import type { Alignment } from '../../../src/core/alignment/alignment.ts';
import { doubtOf } from '../../../src/core/alignment/doubt.ts';
import { mainSlots } from '../../../src/core/alignment/main-slots.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { line, sheetOf } from './made-sheet.ts';

const sheet = sheetOf(line('>RLR >LRL'));
const slots = layOut(sheet);
const levels = { accentDb: -16, tapDb: -30, accentSpreadDb: 2, tapSpreadDb: 2, accentShare: 1 / 3 };
const segment = {
  firstSlot: 0,
  lastSlot: 5,
  state: 'graded',
  leadSwapped: false,
  origin: 0,
  period: 0.5,
} as const;
const whole: Alignment = {
  reference: 'asked-tempo',
  segments: [segment],
  matches: slots.map((_, i) => ({ slot: i, stroke: i, segment: 0 })),
  missed: [],
  extra: [],
  doubled: [],
  outside: [],
  doubt: null,
};
const codeOf = (change: Partial<Alignment>, model: typeof levels | null = levels) =>
  doubtOf({ alignment: { ...whole, ...change }, slots, main: mainSlots(slots, sheet), levels: model })
    ?.code ?? null;

describe('doubtOf', () => {
  it('has none about a take that fits', () => {
    expect(codeOf({})).toBeNull();
  });

  it('names what speaks against an alignment', () => {
    expect(codeOf({ segments: [{ ...segment, state: 'abandoned' }] })).toBe('nothing-fits');
    expect(codeOf({ missed: [0, 1, 2], matches: whole.matches.slice(3) })).toBe('many-unmatched');
    expect(codeOf({ outside: Array.from({ length: 30 }, (_, i) => 10 + i) })).toBe('mostly-outside');
    expect(codeOf({}, null)).toBe('phase-not-told');
  });

  it.each(['heard-click', 'played-click'] as const)(
    'is none of the phase where a %s tells it',
    (reference) => {
      expect(codeOf({ reference }, null)).toBeNull();
    },
  );

  it('says from how many slots and strokes', () => {
    const of = (change: Partial<Alignment>, model: typeof levels | null = levels) =>
      doubtOf({ alignment: { ...whole, ...change }, slots, main: mainSlots(slots, sheet), levels: model })
        ?.facts;
    const two = [
      { ...segment, firstSlot: 1, lastSlot: 2 },
      { ...segment, firstSlot: 4, lastSlot: 5 },
    ];
    expect(of({ segments: [] })).toEqual({ slots: 6 });
    expect(of({ segments: two, missed: [1, 2], matches: whole.matches.slice(4) })).toEqual({
      matched: 2,
      slots: 4,
    });
    const outside = Array.from({ length: 40 }, (_, i) => 20 + i);
    expect(
      of({ extra: [{ stroke: 6 }, { stroke: 7 }] as never, doubled: [{ stroke: 8 }] as never, outside }),
    ).toEqual({
      inside: 9,
      strokes: 49,
    });
    expect(of({ outside: [9, 10] }, null)).toEqual({ strokes: 8 });
  });

  it('begins under three slots of five, and under a stroke of four', () => {
    const five = { segments: [{ ...segment, firstSlot: 1 }] };
    expect(codeOf({ ...five, missed: [1, 2] })).toBeNull();
    expect(codeOf({ ...five, missed: [1, 2, 3] })).toBe('many-unmatched');
    const outside = Array.from({ length: 18 }, (_, i) => 10 + i);
    expect(codeOf({ outside })).toBeNull();
    expect(codeOf({ outside: [...outside, 28] })).toBe('mostly-outside');
  });

  it('trusts a rhythm that is not even to tell the phase', () => {
    const told = (notation: string) => {
      const own = sheetOf(line(notation));
      const main = mainSlots(layOut(own), own);
      return doubtOf({ alignment: whole, slots, main, levels: null })?.code ?? null;
    };
    expect(told('RLR LRL RLR')).toBe('phase-not-told');
    expect(told('RL RLR')).toBeNull();
    expect(told('RLR L-R')).toBeNull();
  });

  it('trusts a click to tell the phase', () => {
    expect(codeOf({ reference: 'heard-click' }, null)).toBeNull();
  });
});
