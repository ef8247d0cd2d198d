import { describe, expect, it } from 'vitest';
import { tempoChange } from '../../../src/core/measures/tempo-change.ts';
import { coverage, coverageBounds, figureOf } from './coverage.ts';
import { machine, players, simulatedPerformance } from './simulated-performance.ts';

const sheet = 'tempo: 111.111\n>RLR >LRL >RLR >LRL; x12';

describe('tempo-change', () => {
  it('of a machine that slows evenly by 3 % is the change of its tempo', () => {
    const take = simulatedPerformance({ sheet, seed: 1, player: machine, timeSe: 0, slowing: 0.03 });
    expect(figureOf(tempoChange, take).value).toBeCloseTo(100 * (0.985 / 1.015 - 1), 1);
  });

  it('of a steady but slow machine is none', () => {
    const take = simulatedPerformance({ sheet, seed: 1, player: machine, timeSe: 0, slower: 1.05 });
    expect(figureOf(tempoChange, take).value).toBeCloseTo(0, 6);
  });

  it('counts on through a page turn', () => {
    const two = 'tempo: 100\n>RLR >LRL; x16; rest: 8\n>RLR >LRL; x16';
    const take = simulatedPerformance({ sheet: two, seed: 1, player: machine, timeSe: 0, slowing: 0.02 });
    expect(take.timing!.stretch.at(-1)).toBe(1);
    expect(figureOf(tempoChange, take).value).toBeCloseTo(-2, 0);
  });

  it.each(['independent jitter', 'middling corrector', 'no click'])(
    'of the %s who holds the tempo holds zero',
    (name) => {
      const runs = 300;
      const play = (seed: number) => simulatedPerformance({ sheet, seed, player: players[name]! });
      const { share, mean } = coverage(runs, play, 0, tempoChange);
      expect(Math.abs(mean)).toBeLessThan(0.15);
      expect(share).toBeGreaterThan(coverageBounds(runs).least);
    },
  );
});
