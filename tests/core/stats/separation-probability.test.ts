import { describe, expect, it } from 'vitest';
import { separationProbability } from '../../../src/core/stats/separation-probability.ts';

describe('separationProbability', () => {
  it('is the example', () => expect(separationProbability([3, 4], [1, 3])).toBe(0.875));
  it('is one half of a set against itself', () =>
    expect(separationProbability([1, 2, 3], [3, 1, 2])).toBe(0.5));
  it('counts pairs', () => {
    const upper = [5, 1, 9, 3, 3];
    const lower = [2, 3, 3, 8];
    let wins = 0;
    for (const u of upper) for (const l of lower) wins += u > l ? 1 : u === l ? 0.5 : 0;
    expect(separationProbability(upper, lower)).toBe(wins / 20);
  });
  it('refuses an empty side', () => expect(() => separationProbability([], [1])).toThrow(RangeError));
});
