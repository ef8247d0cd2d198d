import { describe, expect, it } from 'vitest';
import { beatShape } from '../../src/charts/beat-shape.ts';
import { stepsBetween, stepWords } from '../../src/charts/steps-between.ts';
import { transitions } from '../../src/charts/transitions.ts';
import { smallTake } from './small-take.ts';
import { walkingTake } from './walking-take.ts';

describe('steps, against intervals known by construction', () => {
  it('are as much longer than even as their ends lie apart', () => {
    // Partials at 0, −6 and 4 ms: 1 to 2 loses 6, 2 to 3 gains 10, 3 to 1 loses 4.
    const rows = beatShape.table(smallTake(8)).rows.map(([step, count, middle]) => [step, count, middle]);
    expect(rows).toEqual([
      ['1 to 2', '8', '6.0 ms shorter'],
      ['2 to 3', '8', '10.0 ms longer'],
      ['3 to 1', '7', '4.0 ms shorter'],
    ]);
  });

  it('equal the played interval less the even one', () => {
    const take = smallTake(8);
    for (const { from, to, beyondEvenMs } of stepsBetween(take)) {
      expect(1000 * (to.time - from.time) - 200).toBeCloseTo(beyondEvenMs, 6);
    }
  });

  it('leave out a step over a missed stroke or into another run', () => {
    const take = smallTake(8);
    const role = take.strokes.role.map((one, i) => (i === 10 ? ('outside' as const) : one));
    expect(stepsBetween({ ...take, strokes: { ...take.strokes, role } })).toHaveLength(23 - 2);
    const run = take.segments[0]!;
    const segments = [
      { ...run, lastSlot: 11 },
      { ...run, firstSlot: 12 },
    ];
    expect(stepsBetween({ ...take, segments })).toHaveLength(23 - 1);
  });

  it('are sorted by what happens in them: the left hand is 2 ms late, so steps to it are longer', () => {
    const rows = transitions.table(walkingTake()).rows.map(([step, count, middle]) => [step, count, middle]);
    const of = Object.fromEntries(rows.map(([step, ...rest]) => [step!, rest]));
    expect(of['same hand']).toEqual(['36', 'even']);
    expect(Number(of['hands change']![0])).toBe(35);
    expect(stepWords(-3.04)).toBe('3.0 ms shorter');
  });
});
