import { describe, expect, it } from 'vitest';
import { partsOfTake } from '../../../src/core/measures/part-of-take.ts';
import type { Scope } from '../../../src/core/result/take-result.ts';
import { takeOfLevels } from './made-levels.ts';

const take = takeOfLevels('>RLR >LRL; x12\nR>LR L>RL; x8', ({ accent }) => (accent ? -18 : -30));

const partOf = (scope: Scope) => partsOfTake(take, [scope])[0]!;

describe('partsOfTake', () => {
  it.each([
    [{ line: 1 }, 48],
    [{ line: 0, repeat: 2 }, 6],
    [{ hand: 'L' }, 60],
    [{ partial: 3 }, 40],
  ] as const)('%j has %i strokes and as many slots', (scope, count) => {
    const { strokes, asked } = partOf(scope);
    expect(strokes).toHaveLength(count);
    expect(asked).toHaveLength(count);
  });

  it('has a local tempo where it is a whole line', () => {
    expect(partOf({ line: 0 }).timing?.count).toBe(72);
    expect(partOf({ hand: 'R' }).timing).toBeNull();
  });

  it('keeps what was heard of the accents in the whole take', () => {
    expect(partOf({ line: 1 }).accents).toBe(take.accents);
  });
});
