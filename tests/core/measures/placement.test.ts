import { describe, expect, it } from 'vitest';
import { placement } from '../../../src/core/measures/placement.ts';
import { coverage, coverageBounds, figureOf, outcomeOf } from './coverage.ts';
import { machine, players, simulatedPerformance } from './simulated-performance.ts';

const late = [0, -0.005, 0.004];
const meanLate = (0 - 0.005 + 0.004) / 3;
const habit = (slot: { partial: number; hand: string }) =>
  late[slot.partial - 1]! + (slot.hand === 'L' ? 0.002 : -0.002);
const handToHand = 'tempo: 111.111\n>RLR >LRL >RLR >LRL; x12';

describe('placement', () => {
  it.each(['independent jitter', 'middling corrector', 'no click'])(
    'of the %s is met, its interval holds it',
    (name) => {
      const runs = 300;
      const play = (seed: number) =>
        simulatedPerformance({
          sheet: handToHand,
          seed,
          player: players[name]!,
          habit,
          missedShare: 0.01,
          strayShare: 0.005,
        });
      const truth = 1000 * (late[1]! - meanLate);
      const { share, mean } = coverage(runs, play, truth, placement, { partial: 2 });
      const { least, most } = coverageBounds(runs);
      expect(Math.abs(mean - truth)).toBeLessThan(0.25);
      expect(share).toBeGreaterThan(least);
      expect(share).toBeLessThan(most);
    },
  );

  it('of a machine with a habit is the habit, whatever its hands do', () => {
    const take = simulatedPerformance({ sheet: handToHand, seed: 1, player: machine, habit, timeSe: 0 });
    late.forEach((value, k) => {
      expect(figureOf(placement, take, { partial: k + 1 }).value).toBeCloseTo(1000 * (value - meanLate), 6);
    });
    expect(figureOf(placement, take).value).toBeCloseTo(1000 * Math.abs(late[1]! - meanLate), 6);
  });

  it('knows sixteenths, and a take with missed strokes', () => {
    const four = [0.003, -0.001, 0, -0.002];
    const take = simulatedPerformance({
      sheet: 'tempo: 80\n>RLRL >RLRL; x16',
      seed: 2,
      player: machine,
      timeSe: 0,
      missedShare: 0.05,
      habit: (slot) => four[slot.partial - 1]!,
    });
    four.forEach((value, k) => {
      expect(figureOf(placement, take, { partial: k + 1 }).value).toBeCloseTo(1000 * value, 6);
    });
  });

  it('is not bent by a change of tempo', () => {
    const take = simulatedPerformance({
      sheet: handToHand,
      seed: 1,
      player: machine,
      habit,
      timeSe: 0,
      slowing: 0.03,
    });
    expect(figureOf(placement, take, { partial: 2 }).value).toBeCloseTo(1000 * (late[1]! - meanLate), 1);
  });

  it('speaks of no partials where the beat has one', () => {
    const take = simulatedPerformance({ sheet: 'tempo: 80\n>R L >R L; x16', seed: 2, player: machine });
    expect(outcomeOf(placement, take)).toMatchObject({
      state: 'not-applicable',
      reason: { code: 'one-partial-only' },
    });
  });

  it('finds something in an even player in at most one take of twenty', () => {
    const runs = 200;
    let found = 0;
    for (let seed = 1; seed <= runs; seed++) {
      const take = simulatedPerformance({ sheet: handToHand, seed, player: players['independent jitter']! });
      if (figureOf(placement, take).low > 0) found++;
    }
    // Two binomial standard errors are allowed.
    expect(found / runs).toBeLessThan(0.05 + 2 * Math.sqrt((0.05 * 0.95) / runs));
  });
});
