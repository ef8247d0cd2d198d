import { describe, expect, it } from 'vitest';
import { accentMatch } from '../../../src/core/measures/accent-match.ts';
import { coverage, coverageBounds, figureOf, outcomeOf } from './coverage.ts';
import { plain, takeOfLevels } from './made-levels.ts';

const sheet = '>RLR >LRL; x12\nR>LR L>RL; x12';
const weakSecond = (slot: Parameters<typeof plain>[0]) =>
  plain(slot) - (slot.partial === 2 && slot.hand === 'L' ? 4 : 0);

describe('accent-match', () => {
  it('finds the accents of the partial and hand that stand lower than the others', () => {
    const runs = 200;
    const play = (seed: number) => takeOfLevels(sheet, weakSecond, { seed });
    const { share, mean } = coverage(runs, play, -4, accentMatch, { partial: 2, hand: 'L' });
    expect(Math.abs(mean + 4)).toBeLessThan(0.15);
    expect(share).toBeGreaterThan(coverageBounds(runs).least);
    expect(figureOf(accentMatch, play(1)).value).toBeGreaterThan(3);
  });

  it('seldom finds one where all are alike', () => {
    const found = Array.from({ length: 200 }, (_, seed) =>
      figureOf(accentMatch, takeOfLevels(sheet, plain, { seed: seed + 1 })),
    ).filter(({ low }) => low > 0).length;
    expect(found / 200).toBeLessThan(0.08);
  });

  it('does not exist with one kind of accent', () => {
    expect(outcomeOf(accentMatch, takeOfLevels('>RLL >RLL; x12', plain))).toMatchObject({
      reason: { code: 'one-kind-of-accent' },
    });
  });

  it('never counts as many strokes as it needs where it refuses a part', () => {
    const six = '>RLR >LRL; x6\nR>LR L>RL; x6';
    const slipped = (slot: Parameters<typeof plain>[0]) =>
      plain(slot) - (slot.partial === 2 && slot.hand === 'L' && slot.repeat >= 4 ? 30 : 0);
    const scope = { partial: 2, hand: 'L' } as const;
    expect(figureOf(accentMatch, takeOfLevels(six, plain), scope).strokes).toBe(24);
    const outcome = outcomeOf(accentMatch, takeOfLevels(six, slipped), scope);
    expect(outcome).toMatchObject({ reason: { code: 'too-few-strokes', facts: { needed: 6 } } });
    const { reason } = outcome as Extract<typeof outcome, { readonly reason: unknown }>;
    expect(reason.facts.strokes).toBeLessThan(6);
  });
});
