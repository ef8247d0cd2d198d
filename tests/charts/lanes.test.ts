import { describe, expect, it } from 'vitest';
import { gradedStrokes } from '../../src/charts/graded-strokes.ts';
import { lanes } from '../../src/charts/lanes.ts';
import { smallTake } from './small-take.ts';

describe('lanes', () => {
  it('makes one lane a partial, or one a partial and hand', () => {
    const strokes = gradedStrokes(smallTake(4));
    expect(lanes(strokes, { byHand: false }).map((l) => l.label)).toEqual(['1', '2', '3']);
    const byHand = lanes(strokes, { byHand: true });
    expect(byHand.map((l) => l.label)).toEqual([
      '1 right',
      '1 left',
      '2 right',
      '2 left',
      '3 right',
      '3 left',
    ]);
    expect(byHand.map((l) => l.strokes.length)).toEqual([2, 2, 2, 2, 2, 2]);
  });

  it('keeps different divisions of the beat apart', () => {
    const result = smallTake(2);
    const divisions = result.slots.divisions.map((_, i) => (i < 3 ? 3 : 4));
    const strokes = gradedStrokes({ ...result, slots: { ...result.slots, divisions } });
    expect(lanes(strokes, { byHand: false }).map((l) => l.label)).toEqual([
      '1 of 3',
      '2 of 3',
      '3 of 3',
      '1 of 4',
      '2 of 4',
      '3 of 4',
    ]);
  });

  it('has no place for strokes without a deviation', () => {
    const strokes = gradedStrokes(smallTake(1)).map((s) => ({ ...s, deviationMs: null }));
    expect(lanes(strokes, { byHand: false })).toEqual([]);
  });
});
