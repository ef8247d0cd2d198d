import { describe, expect, it } from 'vitest';
import { wander } from '../../../src/core/measures/wander.ts';
import { coverage, coverageBounds, figureOf, outcomeOf } from './coverage.ts';
import { machine, type Player, players, simulatedPerformance } from './simulated-performance.ts';

const play = (player: Player, repeats: number, seed: number, habit: (slot: { beatTime: number }) => number) =>
  simulatedPerformance({
    sheet: `tempo: 111.111\n>RLR >LRL >RLR >LRL; x${repeats}`,
    seed,
    player,
    habit,
    timeSe: 0,
  });
const none = () => 0;

/** Root mean square over takes of other seeds: what the figure aims at, ms. */
function truth(player: Player, repeats: number): number {
  const squares = Array.from(
    { length: 200 },
    (_, seed) => figureOf(wander, play(player, repeats, 5000 + seed, none)).value ** 2,
  );
  return Math.sqrt(squares.reduce((a, b) => a + b, 0) / squares.length);
}

describe('wander', () => {
  it('of a machine that sways by a sine of 10 ms over 24 beats is near its effective value', () => {
    const sway = (slot: { beatTime: number }) => 0.01 * Math.sin((2 * Math.PI * slot.beatTime) / 24);
    const { value } = figureOf(wander, play(machine, 24, 1, sway));
    // 10/√2 = 7.07, a little of it smoothed away by lines over four of 24 beats
    expect(value).toBeGreaterThan(6.5);
    expect(value).toBeLessThan(7.1);
  });

  it.each([
    ['slow corrector', 12],
    ['quick corrector', 12],
    ['no click', 12],
    ['no click', 4],
  ] as const)('of the %s over %i times four beats is met, and its interval holds it', (name, repeats) => {
    const runs = 200;
    const player = players[name]!;
    const { share } = coverage(
      runs,
      (seed) => play(player, repeats, seed, none),
      truth(player, repeats),
      wander,
    );
    expect(share).toBeGreaterThan(coverageBounds(runs).least);
  });

  it('is wide where nobody gives the time: a factor of 2 or more', () => {
    const { low, high } = figureOf(wander, play(players['no click']!, 12, 1, none));
    expect(high / low).toBeGreaterThan(2);
  });

  it('wants twelve beats in one go', () => {
    expect(outcomeOf(wander, play(machine, 2, 1, none))).toMatchObject({
      state: 'not-measurable',
      reason: { code: 'no-run-long-enough', facts: { beats: 8, needed: 12 } },
    });
  });
});
