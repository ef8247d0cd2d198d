import { describe, expect, it } from 'vitest';
import { npvi } from '../../../src/core/measures/npvi.ts';
import { coverage, coverageBounds, figureOf } from './coverage.ts';
import { machine, players, simulatedPerformance } from './simulated-performance.ts';

const sheet = 'tempo: 60\nRL RL; x24';

describe('npvi', () => {
  it('of long and short in turn is what the formula gives by hand', () => {
    // Half beats of 0.5 s, every second stroke 0.1 s late: intervals 0.6, 0.4, 0.6 …: 100 · 0.2/0.5 = 40.
    const late = (slot: { partial: number }) => (slot.partial === 2 ? 0.1 : 0);
    const take = simulatedPerformance({ sheet, seed: 1, player: machine, habit: late, timeSe: 0 });
    expect(figureOf(npvi, take).value).toBeCloseTo(40, 6);
  });

  it('holds what many takes give', () => {
    const play = (seed: number) =>
      simulatedPerformance({
        sheet: 'tempo: 110\n>RLR >LRL; x24',
        seed,
        player: players['middling corrector']!,
      });
    const { mean } = coverage(200, (seed) => play(seed + 7000), 0, npvi);
    const { share } = coverage(200, play, mean, npvi);
    expect(share).toBeGreaterThan(coverageBounds(200).least);
  });

  it('is for files alone', () => {
    expect(npvi.exportOnly).toBe(true);
  });
});
