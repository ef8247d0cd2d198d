import { describe, expect, it } from 'vitest';
import { handChangeGap } from '../../../src/core/measures/hand-change-gap.ts';
import { coverage, coverageBounds, figureOf, outcomeOf } from './coverage.ts';
import { machine, type Player, players, simulatedPerformance } from './simulated-performance.ts';

/** Doubles over triplets without accents: every change of hands falls on every partial in turn. */
const doubles = 'tempo: 110\nRRL LRR LLR RLL; x14';
const changes = new Map(
  simulatedPerformance({ sheet: doubles, seed: 1, player: machine }).strokes.map((s) => [
    s.slot.index,
    s.handChange === true,
  ]),
);
const play = (player: Player, seed: number, lateMs: number) =>
  simulatedPerformance({
    sheet: doubles,
    seed,
    player,
    timeSe: 0,
    habit: (slot) =>
      (changes.get(slot.index) ? lateMs / 1000 : 0) +
      (slot.hand === 'L' ? 0.004 : 0) +
      (slot.partial === 3 ? 0.003 : 0),
  });

describe('hand-change-gap', () => {
  it('of doubles whose first stroke is 3 ms late is 6 ms: that interval grows and the next one shrinks', () => {
    expect(figureOf(handChangeGap, play(machine, 1, 3)).value).toBeCloseTo(6, 1);
  });

  it('holds the truth of a player', () => {
    const runs = 200;
    const { share, mean } = coverage(
      runs,
      (seed) => play(players['middling corrector']!, seed, 3),
      6,
      handChangeGap,
    );
    expect(Math.abs(mean - 6)).toBeLessThan(0.3);
    expect(share).toBeGreaterThan(coverageBounds(runs).least);
    expect(share).toBeLessThan(coverageBounds(runs).most);
  });

  it.each([
    ['>RLR >LRL; x20', 'hands-always-change'],
    ['>RRR >LLL; x20', 'change-goes-with-partial'],
    ['>RRR >RRR; x20', 'one-hand-only'],
    // Every accent opens a double, so what the accent does and what the change does are one.
    ['>RRL LRR >LLR RLL; x14', 'change-goes-with-partial'],
  ])('of %s says %s', (line, code) => {
    const take = simulatedPerformance({ sheet: `tempo: 110\n${line}`, seed: 1, player: machine });
    expect(outcomeOf(handChangeGap, take)).toMatchObject({ state: 'not-applicable', reason: { code } });
  });
});
