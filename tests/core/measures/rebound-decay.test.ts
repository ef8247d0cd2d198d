import { describe, expect, it } from 'vitest';
import { placeInRow } from '../../../src/core/measures/place-in-row.ts';
import { reboundDecay } from '../../../src/core/measures/rebound-decay.ts';
import { coverage, coverageBounds, figureOf, outcomeOf } from './coverage.ts';
import { plain, takeOfLevels } from './made-levels.ts';

const rows = 'RRR LLL; x20';
const places = placeInRow(takeOfLevels(rows, plain).slots);
const decaying = (slot: Parameters<typeof plain>[0]) => plain(slot) - 1.5 * places.get(slot.index)!;

describe('rebound-decay', () => {
  it('of triples that lose 1.5 dB a stroke is met and its interval holds it', () => {
    const runs = 300;
    const play = (seed: number) => takeOfLevels(rows, decaying, { seed });
    const { share, mean } = coverage(runs, play, -1.5, reboundDecay);
    expect(Math.abs(mean + 1.5)).toBeLessThan(0.05);
    expect(share).toBeGreaterThan(coverageBounds(runs).least);
  });

  it('leaves the accent out of it where doubles lie across it', () => {
    const sheet = '>RRL LRR >LLR RLL; x12';
    const after = (slot: Parameters<typeof plain>[0]) =>
      plain(slot) + (slot.partial === 2 && slot.beat % 2 === 0 ? 4 : 0);
    const take = takeOfLevels(sheet, after, { levelSd: () => 0.3 });
    expect(Math.abs(figureOf(reboundDecay, take).value)).toBeLessThan(0.3);
  });

  it('says where rows always follow an accent, and where there are none', () => {
    expect(outcomeOf(reboundDecay, takeOfLevels('>RRL >RRL; x20', plain))).toMatchObject({
      reason: { code: 'row-goes-with-accent' },
    });
    expect(outcomeOf(reboundDecay, takeOfLevels('RLR LRL; x20', plain))).toMatchObject({
      reason: { code: 'no-rows-on-a-hand' },
    });
  });
});
