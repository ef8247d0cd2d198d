import { describe, expect, it } from 'vitest';
import { accentBend } from '../../../src/core/measures/accent-bend.ts';
import { accentBendShare } from '../../../src/core/measures/accent-bend-share.ts';
import { figureOf, outcomeOf } from './coverage.ts';
import { players, simulatedPerformance } from './simulated-performance.ts';

describe('accent-bend-share', () => {
  it('is the bend over 200 ms at 100 beats a minute', () => {
    const take = simulatedPerformance({
      sheet: 'tempo: 100\n>RLR >LRL; x10\nR>LR L>RL; x10\nRL>R LR>L; x10',
      seed: 1,
      player: players['independent jitter']!,
    });
    const ms = figureOf(accentBend, take, { place: 'after' });
    expect(figureOf(accentBendShare, take, { place: 'after' }).value / ms.value).toBeCloseTo(0.5, 2);
  });
  it('passes a refusal on', () => {
    const take = simulatedPerformance({ sheet: 'tempo: 100\n>RLR', seed: 1, player: players['no click']! });
    expect(outcomeOf(accentBendShare, take)).toEqual(outcomeOf(accentBend, take));
  });
});
