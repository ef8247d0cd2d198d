import { describe, expect, it } from 'vitest';
import { timingSpread } from '../../../src/core/measures/timing-spread.ts';
import { timingSpreadShare } from '../../../src/core/measures/timing-spread-share.ts';
import { figureOf } from './coverage.ts';
import { players, simulatedPerformance } from './simulated-performance.ts';

describe('timing-spread-share', () => {
  it('is the spread over the length of a partial: 200 ms at 100 beats a minute', () => {
    const take = simulatedPerformance({
      sheet: 'tempo: 100\n>RLR >LRL; x30',
      seed: 1,
      player: players['independent jitter']!,
    });
    const ms = figureOf(timingSpread, take);
    const share = figureOf(timingSpreadShare, take);
    expect(share.value).toBeCloseTo((100 * ms.value) / 200, 1);
    expect(share.high / ms.high).toBeCloseTo(share.value / ms.value, 10);
  });
});
