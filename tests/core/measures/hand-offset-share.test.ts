import { describe, expect, it } from 'vitest';
import { handOffsetShare } from '../../../src/core/measures/hand-offset-share.ts';
import { figureOf } from './coverage.ts';
import { machine, simulatedPerformance } from './simulated-performance.ts';

describe('hand-offset-share', () => {
  it('is 2 % for 4 ms at 200 ms a partial', () => {
    const take = simulatedPerformance({
      sheet: 'tempo: 100\n>RLR >LRL; x30',
      seed: 1,
      player: machine,
      timeSe: 0,
      habit: (slot) => (slot.hand === 'L' ? 0.004 : 0),
    });
    expect(figureOf(handOffsetShare, take).value).toBeCloseTo(2, 6);
  });
});
