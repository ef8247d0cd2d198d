import { describe, expect, it } from 'vitest';
import type { Alignment } from '../../../src/core/alignment/alignment.ts';
import { doubtOf } from '../../../src/core/alignment/doubt.ts';
import { mainSlots } from '../../../src/core/alignment/main-slots.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { line, sheetOf } from './simulated-take.ts';

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

  it('trusts a click to tell the phase', () => {
    expect(codeOf({ reference: 'heard-click' }, null)).toBeNull();
  });
});
