import { describe, expect, it } from 'vitest';
import { timingSpreadTrend } from '../../../src/core/measures/timing-spread-trend.ts';
import { coverage, coverageBounds, outcomeOf } from './coverage.ts';
import {
  machine,
  normalFrom,
  type Player,
  players,
  simulatedPerformance,
  uniformFrom,
} from './simulated-performance.ts';

const sheet = (repeats: number) => `tempo: 110\n>RLR >LRL >RLR >LRL; x${repeats}`;

/** A machine whose scatter grows from 5 ms by a factor over the take. */
function loosening(repeats: number, factor: number) {
  return (seed: number) => {
    const normal = normalFrom(uniformFrom(seed + 4000));
    const last = 12 * repeats - 1;
    const habit = (slot: { index: number }) => 0.005 * factor ** (slot.index / last) * normal();
    return simulatedPerformance({ sheet: sheet(repeats), seed, player: machine, habit });
  };
}

describe('timing-spread-trend', () => {
  it.each([12, 40])(
    'at %i times four beats a doubled scatter is met and its interval holds it',
    (repeats) => {
      const runs = 200;
      const { share, mean } = coverage(runs, loosening(repeats, 2), 100, timingSpreadTrend);
      expect(Math.abs(mean - 100)).toBeLessThan(15);
      expect(share).toBeGreaterThan(coverageBounds(runs).least);
    },
  );

  it.each(Object.entries(players))(
    'of the %s finds a change in few takes where there is none',
    (_, player: Player) => {
      const runs = 200;
      const play = (seed: number) => simulatedPerformance({ sheet: sheet(12), seed, player });
      const { share } = coverage(runs, play, 0, timingSpreadTrend);
      expect(share).toBeGreaterThan(coverageBounds(runs).least);
    },
  );

  it('wants nearly sixteen triplets', () => {
    const take = simulatedPerformance({ sheet: sheet(3), seed: 1, player: players['quick corrector']! });
    expect(outcomeOf(timingSpreadTrend, take)).toMatchObject({ reason: { code: 'too-short-for-a-trend' } });
  });
});
