import { describe, expect, it } from 'vitest';
import type { Measure } from '../../../src/core/measures/measure.ts';
import { coverage, coverageBounds, outcomeOf } from './coverage.ts';
import { players, simulatedPerformance, type Take } from './simulated-performance.ts';

/** Clock 4 ms, movement 4 ms, with lasting habits that belong to neither. */
export const playWithoutClick = (seed: number, rest: Partial<Take> = {}) =>
  simulatedPerformance({
    sheet: 'tempo: 111.111\n>RLR >LRL; x36',
    seed,
    player: players['no click']!,
    habit: (slot) => (slot.hand === 'L' ? 0.006 : 0) + [0, -0.005, 0.004][slot.partial - 1]!,
    ...rest,
  });

/** What holds for both parts that intervals without a click are made of. */
export function describeClockOrMotor(measure: Measure): void {
  const play = playWithoutClick;
  describe(measure.id, () => {
    it('of a player with 4 ms is met and its interval holds it', () => {
      const runs = 300;
      const { share, mean, measured } = coverage(runs, play, 4, measure);
      expect(measured / runs).toBeGreaterThan(0.9);
      expect(Math.abs(mean - 4)).toBeLessThan(0.35);
      expect(share).toBeGreaterThan(coverageBounds(runs).least);
    });

    it('exists without a click alone', () => {
      const take = play(1, { player: players['quick corrector']! });
      expect(outcomeOf(measure, take)).toMatchObject({ reason: { code: 'played-to-a-click' } });
    });

    it('wants a hundred intervals', () => {
      expect(outcomeOf(measure, play(1, { sheet: 'tempo: 111.111\n>RLR >LRL; x12' }))).toMatchObject({
        reason: { code: 'too-few-intervals', facts: { intervals: 71, needed: 100 } },
      });
    });

    it("says so where the intervals don't split", () => {
      // A tempo that swings to and fro makes neighbouring intervals alike.
      const swing = (slot: { beatTime: number }) => 0.06 * Math.sin((2 * Math.PI * slot.beatTime) / 9);
      const take = play(1, { player: { ...players['no click']!, motor: 0.0001 }, habit: swing });
      expect(outcomeOf(measure, take)).toMatchObject({ reason: { code: 'clock-and-motor-do-not-split' } });
    });
  });
}
