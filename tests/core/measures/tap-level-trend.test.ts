import { describe, expect, it } from 'vitest';
import { tapLevelTrend } from '../../../src/core/measures/tap-level-trend.ts';
import { coverage, coverageBounds, outcomeOf } from './coverage.ts';
import { plain, takeOfLevels } from './made-levels.ts';

const rising = (slots: number) => (slot: Parameters<typeof plain>[0]) =>
  plain(slot) + (slot.accent ? 0 : (3 * Math.floor(slot.index / 3)) / (slots / 3 - 1));

describe('tap-level-trend', () => {
  it.each([8, 24, 80])('at %i times two beats is met and its interval holds it', (repeats) => {
    const runs = 200;
    const play = (seed: number) => takeOfLevels(`>RLR >LRL; x${repeats}`, rising(6 * repeats), { seed });
    const { share, mean } = coverage(runs, play, 3, tapLevelTrend);
    expect(Math.abs(mean - 3)).toBeLessThan(0.25);
    expect(share).toBeGreaterThan(coverageBounds(runs).least);
  });

  it('is no trend where a later line asks for fewer accents', () => {
    const take = takeOfLevels('>RLR >LRL; x12\nRLR LRL; x12', plain, { levelSd: () => 0.5 });
    const outcome = outcomeOf(tapLevelTrend, take);
    expect(outcome.state === 'measured' && outcome.low < 0 && outcome.high > 0).toBe(true);
  });

  it('wants sixteen beats', () => {
    expect(outcomeOf(tapLevelTrend, takeOfLevels('>RLR >LRL; x4', plain))).toEqual({
      state: 'not-measurable',
      reason: { code: 'too-short-for-a-trend', facts: { strokes: 16, needed: 32 } },
    });
  });
});
