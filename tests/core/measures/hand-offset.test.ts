import { describe, expect, it } from 'vitest';
import { handOffset } from '../../../src/core/measures/hand-offset.ts';
import { coverage, coverageBounds, figureOf, outcomeOf } from './coverage.ts';
import { machine, players, simulatedPerformance } from './simulated-performance.ts';

const habit = (slot: { partial: number; hand: string }) =>
  [0, -0.005, 0.004, -0.001 / 3][slot.partial - 1]! + (slot.hand === 'L' ? 0.004 : 0);
const play = (sheet: string, rest = {}) =>
  simulatedPerformance({
    sheet: `tempo: 111.111\n${sheet}`,
    seed: 1,
    player: machine,
    timeSe: 0,
    habit,
    ...rest,
  });

describe('hand-offset', () => {
  it.each(['>RLR >LRL; x24', '>RRR >LLL; x24', '>RRL LRR LLR RLL; x12', '>RLRL >RRLL; x12\n>RLR >LRL; x12'])(
    'of a machine whose left is 4 ms late is 4 ms in %s',
    (sheet) => expect(figureOf(handOffset, play(sheet)).value).toBeCloseTo(4, 6),
  );

  it.each(['>RRL; x48', '>RLL; x48'])(
    'says so where hand and partial always go together, as in %s',
    (sheet) => {
      expect(outcomeOf(handOffset, play(sheet))).toEqual({
        state: 'not-applicable',
        reason: { code: 'hand-goes-with-partial', facts: {} },
      });
    },
  );

  it('follows the hands when the lead is swapped', () => {
    const swapped = play('>RLR >LRL; x24', {
      change: (a: { segments: { leadSwapped: boolean }[] }) => ({
        ...a,
        segments: a.segments.map((s) => ({ ...s, leadSwapped: true })),
      }),
    });
    expect(figureOf(handOffset, swapped).value).toBeCloseTo(-4, 6);
  });

  it('has no hands to compare in a line for one', () => {
    expect(outcomeOf(handOffset, play('>RRR; x24'))).toMatchObject({ reason: { code: 'one-hand-only' } });
  });

  it('is not measured when an early missed stroke leaves the hands of the take open', () => {
    const lost = play('>RLR >LRL; x24', {
      change: (a: { matches: { slot: number }[]; missed: number[] }) => ({
        ...a,
        matches: a.matches.filter((m) => m.slot !== 20),
        missed: [20],
      }),
    });
    expect(lost.hands).toBe('not-told');
    expect(outcomeOf(handOffset, lost)).toEqual({
      state: 'not-measurable',
      reason: { code: 'hands-not-told', facts: {} },
    });
  });

  it.each(['independent jitter', 'quick corrector', 'no click'])(
    'of the %s is met, its interval holds it',
    (name) => {
      const runs = 300;
      const { share, mean } = coverage(
        runs,
        (seed) => play('>RLR >LRL; x24', { seed, player: players[name]! }),
        4,
        handOffset,
      );
      const { least, most } = coverageBounds(runs);
      expect(Math.abs(mean - 4)).toBeLessThan(0.3);
      expect(share).toBeGreaterThan(least);
      expect(share).toBeLessThan(most);
    },
  );

  it('points at late strokes of the late hand and early ones of the other', () => {
    const take = play('>RLR >LRL; x24', { player: { ...machine, motor: 0.003 } });
    const { pointsAt } = figureOf(handOffset, take);
    expect(pointsAt).toHaveLength(12);
    const deviation = (stroke: number) =>
      take.timing!.deviation[stroke]! * (take.strokes[stroke]!.hand === 'L' ? 1 : -1);
    for (const stroke of pointsAt) expect(deviation(stroke)).toBeGreaterThan(0);
  });
});
