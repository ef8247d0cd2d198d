import { describe, expect, it } from 'vitest';
import { strokeColumns } from '../../../src/core/grading/stroke-columns.ts';
import { performanceOf } from '../../../src/core/measures/performance.ts';
import { machineTake } from './machine-take.ts';
import { madeTake } from './made-take.ts';

const take = madeTake();
const columns = strokeColumns(take.strokes, performanceOf(take));
const at = (time: number) => take.strokes.findIndex((stroke) => Math.abs(stroke.time - time) < 1e-6);

describe('strokeColumns', () => {
  it('gives every stroke one role', () => {
    const counts: Record<string, number> = {};
    for (const role of columns.role) counts[role] = (counts[role] ?? 0) + 1;
    expect(counts).toEqual({
      outside: 2,
      abandoned: 4,
      matched: 11,
      extra: 1,
      doubled: 1,
      surplus: 6,
    });
    expect(columns.role[at(0.2)]).toBe('outside');
    expect(columns.role[at(5 + 10 / 3 + 0.03)]).toBe('doubled');
    expect(columns.role[at(10)]).toBe('surplus');
  });

  it('gives the slot to strokes on one, and to no other', () => {
    expect(columns.slot[at(5)]).toBe(0);
    expect(columns.slot[at(10)]).toBe(6);
    expect(columns.slot[at(14)]).toBeNull();
    columns.role.forEach((role, i) => {
      expect(columns.slot[i] === null).toBe(['extra', 'doubled', 'outside'].includes(role));
    });
  });

  it('turns the hands round where the player led with the other', () => {
    expect(columns.hand[at(1)]).toBe('R');
    expect(columns.hand[at(5)]).toBe('L');
    expect(columns.hand[at(0.2)]).toBeNull();
  });

  it('keeps times and levels as they were heard', () => {
    expect(columns.time).toEqual(take.strokes.map(({ time }) => time));
    expect(columns.levelDb[0]).toBe(-40);
  });

  it('gives deviations in milliseconds, late positive', () => {
    const { strokes, performance } = machineTake([60, 60], (slot) => (slot === 40 ? 0.002 : 0));
    const { deviationMs } = strokeColumns(strokes, performance);
    // A stroke so far off all others has no part in the line that it is held against.
    expect(deviationMs[40]).toBeCloseTo(2, 9);
    for (const slot of [4, 20, 44, 90]) expect(Math.abs(deviationMs[slot]!)).toBeLessThan(1e-6);
  });

  it('gives none where there are too few strokes for a tempo', () => {
    expect(new Set(columns.deviationMs)).toEqual(new Set([null]));
  });
});
