import { describe, expect, it } from 'vitest';
import { gradedStrokes } from '../../src/charts/graded-strokes.ts';
import { exampleResult } from '../support/example-result.ts';
import { smallTake } from './small-take.ts';

describe('gradedStrokes', () => {
  it('holds the matched strokes with the place each was played on', () => {
    const strokes = gradedStrokes(smallTake(2));
    expect(strokes.map((s) => s.partial)).toEqual([1, 2, 3, 1, 2, 3]);
    expect(strokes.map((s) => s.accent)).toEqual([true, false, false, true, false, false]);
    expect(strokes.map((s) => s.hand).join('')).toBe('RLRLRL');
  });

  it('leaves out extra strokes, abandoned runs and grace notes', () => {
    const result = smallTake(2);
    const role = result.strokes.role.map((r, i) => (i === 1 ? 'abandoned' : r));
    const grace = result.slots.grace.map((_, i) => i === 3);
    const changed = { ...result, strokes: { ...result.strokes, role }, slots: { ...result.slots, grace } };
    expect(gradedStrokes(changed).map((s) => s.stroke)).toEqual([0, 2, 4, 5]);
    expect(gradedStrokes(exampleResult())).toHaveLength(71);
  });

  it('names no hand where hands cannot be told', () => {
    expect(gradedStrokes(smallTake(2, { hands: 'not-told' })).every((s) => s.hand === null)).toBe(true);
  });
});
