import { describe, expect, it } from 'vitest';
import { secondAccent } from '../../../src/core/measures/second-accent.ts';
import { coverage, coverageBounds, outcomeOf } from './coverage.ts';
import { plain, takeOfLevels } from './made-levels.ts';

const weaker = (slot: Parameters<typeof plain>[0]) =>
  plain(slot) - (slot.accent && slot.partial === 2 ? 3 : 0) + (slot.hand === 'L' ? 2 : 0);

describe('second-accent', () => {
  it('of a weaker second one is met, hand for hand', () => {
    const runs = 300;
    const play = (seed: number) => takeOfLevels('>R>LR >L>RL; x16', weaker, { seed });
    const { share, mean } = coverage(runs, play, -3, secondAccent);
    expect(Math.abs(mean + 3)).toBeLessThan(0.1);
    expect(share).toBeGreaterThan(coverageBounds(runs).least);
  });

  it('says where hand and order are one, and where no beat has two', () => {
    expect(outcomeOf(secondAccent, takeOfLevels('>R>LR >R>LR; x16', plain))).toMatchObject({
      reason: { code: 'pair-goes-with-hand' },
    });
    expect(outcomeOf(secondAccent, takeOfLevels('>RLR >LRL; x16', plain))).toMatchObject({
      reason: { code: 'no-accent-pairs' },
    });
  });
});
