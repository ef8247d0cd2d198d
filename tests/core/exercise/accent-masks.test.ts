import { describe, expect, it } from 'vitest';
import { everyMask, maskId, readMask, singleMasks } from '../../../src/core/exercise/accent-masks.ts';

describe('everyMask', () => {
  it('gives every set of partials once', () => {
    expect(everyMask(3)).toEqual([[1], [2], [3], [1, 2], [1, 3], [2, 3], [1, 2, 3], []]);
    expect(new Set(everyMask(6).map(String)).size).toBe(64);
  });
});

describe('singleMasks', () => {
  it('keeps one accent, all and none', () => {
    expect(singleMasks(4)).toEqual([[1], [2], [3], [4], [1, 2, 3, 4], []]);
  });
});

describe('maskId and readMask', () => {
  it('read back what they write', () => {
    expect(maskId([1, 2], 3)).toBe('1+2');
    for (const mask of everyMask(3)) expect(readMask(maskId(mask, 3), 3)).toEqual(mask);
  });

  it('reads partials in any order and refuses what is no partial', () => {
    expect(readMask('2+1', 3)).toEqual([1, 2]);
    expect(readMask(' 3, 1 ', 3)).toEqual([1, 3]);
    expect(readMask('1+2+3', 3)).toEqual(readMask('ALL', 3));
    for (const text of ['', '0', '4', '1+', 'two', '1+4', '-1', '1+'.repeat(100)]) {
      expect(readMask(text, 3)).toBeNull();
    }
  });
});
