import { describe, expect, it } from 'vitest';
import { areAdjacent } from '../../../src/core/measures/adjacent-slots.ts';

describe('areAdjacent', () => {
  it.each([
    ['triplets beside each other', 3, 3, 1 / 3, true],
    ['triplets with a rest between', 3, 3, 2 / 3, false],
    ['the last triplet and an eighth', 3, 2, 1 / 3, true],
    ['an eighth and a sixteenth', 2, 4, 1 / 2, true],
    ['beats with one left out', 1, 1, 2, false],
  ])('is told of %s', (_, one, other, gap, is) => {
    expect(areAdjacent({ divisions: one }, { divisions: other }, gap)).toBe(is);
  });
});
