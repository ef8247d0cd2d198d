import { describe, expect, it } from 'vitest';
import { accentTurns, tellingShifts } from '../../../src/core/measures/accent-turns.ts';
import { plain, takeOfLevels } from './made-levels.ts';

describe('tellingShifts', () => {
  it.each([
    ['>..>..', 3, [0, 1, -1]],
    ['>>>>>>', 3, [0]],
    ['>...>...', 4, [0, 1, -1, 2]],
    ['>.>.', 4, [0, 1]],
    ['>', 1, [0]],
  ])('of %s in %i parts are %j', (pattern, divisions, shifts) => {
    expect(
      tellingShifts(
        [...pattern].map((c) => c === '>'),
        divisions,
      ),
    ).toEqual(shifts);
  });
});

describe('accentTurns', () => {
  const certain = (take: ReturnType<typeof takeOfLevels>) => {
    const loud = take.strokes.map((s) => s.levelDb > -24);
    return {
      asAccent: Float64Array.from(loud, (is) => (is ? 1 : -1.5)),
      asTap: Float64Array.from(loud, (is) => (is ? -1.5 : 0.5)),
    };
  };
  const turning = (from: number, by: number) =>
    takeOfLevels('>RLR >LRL; x12', (slot) => {
      const there = slot.index < from ? slot.partial : slot.partial - by;
      return (there + 2) % 3 === 0 ? -18 : -30;
    });

  it.each([
    [36, 1],
    [35, -1],
    [60, 1],
  ])('finds the stroke from which accents lie off: from %i by %i', (from, by) => {
    const { slots, strokes } = turning(from, by);
    const [turn, ...more] = accentTurns({ slots, strokes, evidence: certain(turning(from, by)) });
    expect(more).toEqual([]);
    expect(turn).toMatchObject({ to: 71, by });
    expect(Math.abs(turn!.from - from)).toBeLessThanOrEqual(2);
  });

  it('finds none in a take as written', () => {
    const take = takeOfLevels('>RLR >LRL; x12', plain);
    expect(accentTurns({ slots: take.slots, strokes: take.strokes, evidence: certain(take) })).toEqual([]);
  });
});
