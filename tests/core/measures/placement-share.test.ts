import { describe, expect, it } from 'vitest';
import { placementShare } from '../../../src/core/measures/placement-share.ts';
import { figureOf } from './coverage.ts';
import { machine, simulatedPerformance } from './simulated-performance.ts';

describe('placement-share', () => {
  it('is 3 % for 6 ms at 200 ms a partial', () => {
    const take = simulatedPerformance({
      sheet: 'tempo: 100\n>RLR >LRL; x30',
      seed: 1,
      player: machine,
      timeSe: 0,
      habit: (slot) => (slot.partial === 3 ? 0.009 : 0),
    });
    expect(figureOf(placementShare, take, { partial: 3 }).value).toBeCloseTo(3, 6);
    expect(figureOf(placementShare, take, { partial: 1 }).value).toBeCloseTo(-1.5, 6);
    expect(figureOf(placementShare, take).value).toBeCloseTo(3, 6);
  });
});
