import { describe, expect, it } from 'vitest';
import { slotColumns } from '../../../src/core/grading/slot-columns.ts';
import { madeTake } from './made-take.ts';

const { slots, alignment, strokes } = madeTake();
const columns = slotColumns(slots, alignment);

describe('slotColumns', () => {
  it('tells played, missed and never reached apart', () => {
    const states = (from: number, to: number) => new Set(columns.state.slice(from, to));
    expect(states(0, 7)).toEqual(new Set(['played']));
    expect(columns.state[7]).toBe('missed');
    expect(states(8, 12)).toEqual(new Set(['played']));
    expect(states(12, 24)).toEqual(new Set(['not-reached']));
  });

  it('names the stroke of the graded run, not of one given up or on top', () => {
    expect(strokes[columns.stroke[0]!]!.time).toBe(5);
    expect(strokes[columns.stroke[6]!]!.time).toBeCloseTo(5 + 6 / 3, 12);
    expect(columns.stroke[7]).toBeNull();
    expect(columns.stroke[12]).toBeNull();
  });

  it('copies the sheet', () => {
    expect(columns.line).toEqual([...Array(12).fill(0), ...Array(12).fill(1)]);
    expect(columns.partial.slice(0, 6)).toEqual([1, 2, 3, 1, 2, 3]);
    expect(columns.hand.slice(0, 6).join('')).toBe('RLRLRL');
    expect(columns.accent.slice(12, 18)).toEqual([false, true, false, false, true, false]);
  });
});
