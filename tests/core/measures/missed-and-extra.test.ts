import { describe, expect, it } from 'vitest';
import { missedAndExtra } from '../../../src/core/measures/missed-and-extra.ts';
import { takeWithFaults } from './completeness.ts';
import { coverage, coverageBounds, figureOf } from './coverage.ts';
import { players, simulatedPerformance } from './simulated-performance.ts';

describe('missed-and-extra', () => {
  it('adds up missed, extra and doubled strokes', () => {
    const take = takeWithFaults({ missed: [5], extraAfter: [20], doubledAfter: [50, 51] });
    expect(figureOf(missedAndExtra, take).value).toBeCloseTo(400 / 96, 10);
  });
  it('holds the chance of a miss', () => {
    const runs = 300;
    const sheet = 'tempo: 111.111\n>RLR >LRL >RLR >LRL; x12';
    const play = (seed: number) =>
      simulatedPerformance({ sheet, seed, player: players['no click']!, missedShare: 0.03 });
    // The simulation never leaves out the first and last stroke.
    const truth = 3 * (142 / 144);
    const { share, mean } = coverage(runs, play, truth, missedAndExtra);
    expect(Math.abs(mean - truth)).toBeLessThan(0.25);
    expect(share).toBeGreaterThan(coverageBounds(runs).least);
  });
  it('widens where faults come in clusters', () => {
    const scattered = figureOf(missedAndExtra, takeWithFaults({ missed: [5, 20, 35, 50, 65, 80] }));
    const clustered = figureOf(missedAndExtra, takeWithFaults({ missed: [30, 31, 32, 33, 34, 35] }));
    expect(clustered.value).toBe(scattered.value);
    expect(clustered.high - clustered.low).toBeGreaterThan(1.3 * (scattered.high - scattered.low));
  });
});
