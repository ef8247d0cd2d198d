import { describe, expect, it } from 'vitest';
import type { Slot } from '../../../src/core/exercise/slot.ts';
import { timingSpread } from '../../../src/core/measures/timing-spread.ts';
import { coverage, coverageBounds, figureOf, outcomeOf } from './coverage.ts';
import {
  asynchronies,
  machine,
  normalFrom,
  type Player,
  players,
  simulatedPerformance,
  uniformFrom,
} from './simulated-performance.ts';

const habit = (slot: { partial: number; hand: string }) =>
  [0, -0.005, 0.004][slot.partial - 1]! + (slot.hand === 'L' ? 0.002 : -0.002);

const play = (player: Player, repeats: number, seed: number, rest = {}) =>
  simulatedPerformance({
    sheet: `tempo: 111.111\n>RLR >LRL >RLR >LRL; x${repeats}`,
    seed,
    player,
    habit,
    ...rest,
  });

/** What the figure aims at, ms: deviations of a long performance round lines over 13 strokes, worked out here. */
function longRunSpread(player: Player): number {
  const a = asynchronies(player, 40_000, normalFrom(uniformFrom(99)));
  let squares = 0;
  let windows = 0;
  for (let i = 0; i + 13 <= a.length; i += 3) {
    const window = [...a.subarray(i, i + 13)];
    const mean = window.reduce((sum, v) => sum + v, 0) / 13;
    const tilt = window.reduce((sum, v, k) => sum + (k - 6) * v, 0) / 182;
    squares += window.reduce((sum, v, k) => sum + (v - mean - tilt * (k - 6)) ** 2, 0) / 11;
    windows++;
  }
  return 1000 * Math.sqrt(squares / windows);
}

describe('timing-spread', () => {
  it.each(Object.entries(players))('of the %s is met and its interval holds it', (_, player) => {
    const runs = 300;
    const truth = longRunSpread(player);
    const { share, mean } = coverage(runs, (seed) => play(player, 12, seed), truth, timingSpread);
    const { least, most } = coverageBounds(runs);
    expect(Math.abs(mean / truth - 1)).toBeLessThan(0.03);
    expect(share).toBeGreaterThan(least);
    expect(share).toBeLessThan(most);
  });

  it('of independent jitter of 8 ms is 8 ms at any length of take', () => {
    for (const repeats of [4, 12, 60]) {
      const runs = Math.ceil(240 / repeats);
      const values = Array.from(
        { length: runs },
        (_, seed) =>
          figureOf(timingSpread, play(players['independent jitter']!, repeats, seed + 700)).value ** 2,
      );
      expect(Math.sqrt(values.reduce((a, b) => a + b, 0) / runs)).toBeGreaterThan(7.6);
      expect(Math.sqrt(values.reduce((a, b) => a + b, 0) / runs)).toBeLessThan(8.4);
    }
  });

  it('holds the truth with missed strokes and strokes far off as well', () => {
    const runs = 300;
    const rest = { missedShare: 0.01, strayShare: 0.005 };
    const { share, mean } = coverage(
      runs,
      (seed) => play(players['independent jitter']!, 12, seed, rest),
      8,
      timingSpread,
    );
    expect(Math.abs(mean - 8)).toBeLessThan(0.25);
    expect(share).toBeGreaterThan(coverageBounds(runs).least);
  });

  it('takes the error of finding strokes out: 3 ms of it on 8 ms of player reads 8', () => {
    const runs = 200;
    const { share, mean } = coverage(
      runs,
      (seed) => play(players['independent jitter']!, 12, seed, { timeSe: 0.003 }),
      8,
      timingSpread,
    );
    expect(Math.abs(mean - 8)).toBeLessThan(0.25);
    expect(share).toBeGreaterThan(coverageBounds(runs).least);
  });

  it('refuses where finding strokes is as coarse as the player', () => {
    const outcome = outcomeOf(timingSpread, play(machine, 12, 1, { timeSe: 0.003 }));
    expect(outcome).toMatchObject({ state: 'not-measurable', reason: { code: 'found-too-coarsely' } });
  });

  it('is measured at 48 strokes and says how many are needed below 24', () => {
    expect(outcomeOf(timingSpread, play(players['independent jitter']!, 4, 1)).state).toBe('measured');
    expect(outcomeOf(timingSpread, play(players['independent jitter']!, 1, 1))).toEqual({
      state: 'not-measurable',
      reason: { code: 'too-few-strokes', facts: { strokes: 12, needed: 24 } },
    });
  });

  it('tells a loose hand from a steady one', () => {
    const left = normalFrom(uniformFrom(5));
    const loose = (slot: { hand: string }) => (slot.hand === 'L' ? 0.012 * left() : 0);
    const take = simulatedPerformance({
      sheet: 'tempo: 110\n>RLR >LRL; x40',
      seed: 3,
      player: { ...machine, motor: 0.004 },
      habit: loose,
    });
    const right = figureOf(timingSpread, take, { hand: 'R' });
    const looseHand = figureOf(timingSpread, take, { hand: 'L' });
    expect(looseHand.low).toBeGreaterThan(right.high);
  });

  /** Independent deviations, each of the spread that its slot is given, ms. */
  const uneven = (sheet: string, spread: (slot: Slot) => number, seed: number) => {
    const normal = normalFrom(uniformFrom(seed + 5000));
    return simulatedPerformance({
      sheet: `tempo: 110\n${sheet}`,
      seed,
      player: machine,
      habit: (slot) => (spread(slot) / 1000) * normal(),
    });
  };
  const sixLines = ['>RLR >LRL', 'R>LR L>RL', 'RL>R LR>L', '>R>LR >L>RL', 'R>L>R L>R>L', '>RLR L>RL']
    .map((line) => `${line}; x8`)
    .join('\n');
  const oneLine = '>RLR >LRL; x40';
  const looseLine = (slot: Slot) => (slot.line === 2 ? 24 : 6);
  const looseHand = (slot: Slot) => (slot.hand === 'L' ? 20 : 6);
  it.each([
    ['a line four times as loose as the others', sixLines, looseLine, { line: 2 }, 24],
    ['a line beside a loose one', sixLines, looseLine, { line: 0 }, 6],
    ['a take with a loose line', sixLines, looseLine, {}, Math.sqrt((5 * 6 ** 2 + 24 ** 2) / 6)],
    ['a loose hand', oneLine, looseHand, { hand: 'L' }, 20],
    ['the steady hand beside it', oneLine, looseHand, { hand: 'R' }, 6],
    ['a loose partial', oneLine, (slot: Slot) => (slot.partial === 2 ? 16 : 6), { partial: 2 }, 16],
    [
      'a loose repeat',
      '>RLR >LRL >RLR >LRL >RLR >LRL >RLR >LRL; x12',
      (slot: Slot) => (slot.repeat === 2 ? 20 : 6),
      { repeat: 2 },
      20,
    ],
  ] as const)('of %s is met and its interval holds it', (_, sheet, spread, scope, truth) => {
    const runs = 150;
    const { share, mean } = coverage(runs, (seed) => uneven(sheet, spread, seed), truth, timingSpread, scope);
    expect(Math.abs(mean / truth - 1)).toBeLessThan(0.06);
    expect(share).toBeGreaterThan(coverageBounds(runs).least);
  });

  it('points at the strokes furthest off', () => {
    const take = simulatedPerformance({
      sheet: 'tempo: 110\n>RLR >LRL; x20',
      seed: 3,
      player: { ...machine, motor: 0.004 },
      habit: (slot) => (slot.index === 50 ? 0.012 : 0),
    });
    expect(figureOf(timingSpread, take).pointsAt).toContain(50);
  });
});
