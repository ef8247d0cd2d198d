import { describe, expect, it } from 'vitest';
import { afterAccentLeak } from '../../../src/core/measures/after-accent-leak.ts';
import { coverage, coverageBounds, figureOf, outcomeOf } from './coverage.ts';
import { plain, takeOfLevels } from './made-levels.ts';

const leaking = (slot: Parameters<typeof plain>[0]) => plain(slot) + (slot.partial === 2 ? 2 : 0);
const line = (repeats: number) => `>RLR >LRL; x${repeats}`;

describe('after-accent-leak', () => {
  it.each([8, 24, 80])('at %i times two beats is met and its interval holds it', (repeats) => {
    const runs = 300;
    const play = (seed: number) => takeOfLevels(line(repeats), leaking, { seed });
    const { share, mean } = coverage(runs, play, 2, afterAccentLeak);
    expect(Math.abs(mean - 2)).toBeLessThan(0.1);
    expect(share).toBeGreaterThan(coverageBounds(runs).least);
    expect(share).toBeLessThan(coverageBounds(runs).most);
  });

  it('is nothing on even taps, within 0.3 dB, whatever the hands', () => {
    const hands = (slot: Parameters<typeof plain>[0]) => plain(slot) + (slot.hand === 'L' ? 4 : 0);
    const { value } = figureOf(afterAccentLeak, takeOfLevels(line(80), hands));
    expect(Math.abs(value)).toBeLessThan(0.3);
  });

  it('keeps the partials apart where the accent moves', () => {
    const sheet = '>RLR >LRL; x12\nR>LR L>RL; x12\nRL>R LR>L; x12\n>RLR LRL; x12';
    const third = (slot: Parameters<typeof plain>[0]) => plain(slot) + (slot.partial === 3 ? 3 : 0);
    const { value } = figureOf(afterAccentLeak, takeOfLevels(sheet, third, { levelSd: () => 0.3 }));
    expect(Math.abs(value)).toBeLessThan(0.2);
  });

  it('says where hand and place are one, and where there is nothing to compare', () => {
    expect(outcomeOf(afterAccentLeak, takeOfLevels('>RRL >RRL; x12', plain))).toMatchObject({
      reason: { code: 'place-goes-with-hand' },
    });
    expect(outcomeOf(afterAccentLeak, takeOfLevels('>RL >RL; x24', plain))).toMatchObject({
      reason: { code: 'no-other-taps' },
    });
    expect(outcomeOf(afterAccentLeak, takeOfLevels('RLR LRL; x12', plain))).toMatchObject({
      reason: { code: 'no-accents' },
    });
  });
});
