import { describe, expect, it } from 'vitest';
import { isShownInReport } from '../../src/report/shown-parts.ts';

describe('isShownInReport', () => {
  it.each([
    ['placement', { partial: 2 }, true],
    ['placement', {}, true],
    ['placement', { line: 1 }, false],
    ['accent-match', { partial: 1, hand: 'L' }, true],
    ['accent-to-tap-ratio', { line: 0, repeat: 3 }, false],
    ['never-heard-of', { hand: 'R' }, false],
    ['never-heard-of', {}, true],
  ] as const)('%s for %j: %j', (id, scope, shown) => {
    expect(isShownInReport({ id, scope })).toBe(shown);
  });
});
