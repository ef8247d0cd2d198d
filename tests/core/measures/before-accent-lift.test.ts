import { describe, expect, it } from 'vitest';
import { beforeAccentLift } from '../../../src/core/measures/before-accent-lift.ts';
import { coverage, coverageBounds, figureOf, outcomeOf } from './coverage.ts';
import { plain, takeOfLevels } from './made-levels.ts';

const lifted = (slot: Parameters<typeof plain>[0]) => plain(slot) + (slot.partial === 4 ? 2.5 : 0);

describe('before-accent-lift', () => {
  it('of sixteenths is met and its interval holds it', () => {
    const runs = 300;
    const play = (seed: number) => takeOfLevels('>RLRL >RLRR >LRLL; x10', lifted, { seed });
    const { share, mean } = coverage(runs, play, 2.5, beforeAccentLift);
    expect(Math.abs(mean - 2.5)).toBeLessThan(0.1);
    expect(share).toBeGreaterThan(coverageBounds(runs).least);
  });

  it('points at the taps that rise', () => {
    const take = takeOfLevels('>RLRL >RLRR >LRLL; x10', lifted);
    const { pointsAt } = figureOf(beforeAccentLift, take);
    expect(pointsAt.length).toBeGreaterThan(0);
    for (const at of pointsAt) expect(take.slots[at]!.partial).toBe(4);
  });

  it('does not exist where every stroke is an accent', () => {
    expect(outcomeOf(beforeAccentLift, takeOfLevels('>R>L>R >L>R>L; x9', plain))).toMatchObject({
      reason: { code: 'no-taps' },
    });
  });
});
