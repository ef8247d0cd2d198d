import { describe, expect, it } from 'vitest';
import { handLevel } from '../../../src/core/measures/hand-level.ts';
import { rubrics } from '../../../src/core/scoring/rubrics/index.ts';
import { coverage, coverageBounds, outcomeOf } from './coverage.ts';
import { plain, takeOfLevels } from './made-levels.ts';

const left = (slot: Parameters<typeof plain>[0]) => plain(slot) + (slot.hand === 'L' ? 2 : 0);

describe('hand-level', () => {
  it('of a louder left hand is met and its interval holds it', () => {
    const runs = 300;
    const play = (seed: number) => takeOfLevels('>RLR >LRL; x16', left, { seed });
    const { share, mean } = coverage(runs, play, 2, handLevel);
    expect(Math.abs(mean - 2)).toBeLessThan(0.1);
    expect(share).toBeGreaterThan(coverageBounds(runs).least);
  });

  it('says where hand and partial are one', () => {
    expect(outcomeOf(handLevel, takeOfLevels('RRL RRL; x16', plain))).toMatchObject({
      reason: { code: 'hand-goes-with-partial' },
    });
  });

  it('is scored by no rubric', () => {
    const scored = rubrics.flatMap((r) => r.dimensions.flatMap((d) => d.criteria.map((c) => c.measure)));
    expect(scored).not.toContain('hand-level');
  });
});
