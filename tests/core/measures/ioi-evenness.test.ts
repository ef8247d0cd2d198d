import { describe, expect, it } from 'vitest';
import { ioiEvenness } from '../../../src/core/measures/ioi-evenness.ts';
import { coverage, coverageBounds, figureOf, outcomeOf } from './coverage.ts';
import { machine, players, simulatedPerformance } from './simulated-performance.ts';

const sheet = 'tempo: 111.111\n>RLR >LRL >RLR >LRL; x12';

describe('ioi-evenness', () => {
  // Interval variance: 2 · 8² of independent jitter; clock² + 2 motor² without a click (Wing & Kristofferson 1973).
  it.each([
    ['independent jitter', Math.sqrt(2 * 64)],
    ['no click', Math.sqrt(16 + 2 * 16)],
  ])('of the %s is met, its interval holds it', (name, sdMs) => {
    const runs = 300;
    const truth = (100 * sdMs) / 180;
    const play = (seed: number) => simulatedPerformance({ sheet, seed, player: players[name]! });
    const { share, mean } = coverage(runs, play, truth, ioiEvenness);
    const { least } = coverageBounds(runs);
    expect(Math.abs(mean / truth - 1)).toBeLessThan(0.03);
    expect(share).toBeGreaterThan(least);
  });

  it('does not count the gap over a missed stroke as an interval', () => {
    const take = simulatedPerformance({ sheet, seed: 1, player: machine, timeSe: 0, missedShare: 0.1 });
    expect(figureOf(ioiEvenness, take).value).toBeCloseTo(0, 6);
    expect(figureOf(ioiEvenness, take).strokes).toBeLessThan(130);
  });

  it('needs 24 strokes', () => {
    const take = simulatedPerformance({ sheet: 'tempo: 110\n>RLR >LRL; x3', seed: 1, player: machine });
    expect(outcomeOf(ioiEvenness, take)).toMatchObject({
      reason: { code: 'too-few-strokes', facts: { needed: 24 } },
    });
  });
});
