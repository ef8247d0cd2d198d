import { describe, expect, it } from 'vitest';
import { ratioTrend } from '../../../src/core/measures/ratio-trend.ts';
import { coverage, coverageBounds, outcomeOf } from './coverage.ts';
import { plain, takeOfLevels } from './made-levels.ts';

const sinking = (slots: number) => (slot: Parameters<typeof plain>[0]) =>
  plain(slot) - (slot.accent ? (4 * Math.floor(slot.index / 3)) / (slots / 3 - 1) : 0);

describe('ratio-trend', () => {
  it.each([8, 24, 80])('at %i times two beats is met and its interval holds it', (repeats) => {
    const runs = 200;
    const play = (seed: number) => takeOfLevels(`>RLR >LRL; x${repeats}`, sinking(6 * repeats), { seed });
    const { share, mean } = coverage(runs, play, -4, ratioTrend);
    expect(Math.abs(mean + 4)).toBeLessThan(0.3);
    expect(share).toBeGreaterThan(coverageBounds(runs).least);
  });

  it('is untouched by a take that sinks as a whole, as when the phone slides', () => {
    const sliding = (slot: Parameters<typeof plain>[0]) => plain(slot) - (6 * slot.index) / 143;
    const play = (seed: number) => takeOfLevels('>RLR >LRL; x24', sliding, { seed });
    expect(Math.abs(coverage(50, play, 0, ratioTrend).mean)).toBeLessThan(0.3);
  });

  it('wants sixteen of each', () => {
    expect(outcomeOf(ratioTrend, takeOfLevels('>RLR >LRL; x4', plain))).toMatchObject({
      reason: { code: 'too-short-for-a-trend' },
    });
  });
});
