import { describe, expect, it } from 'vitest';
import { findMeasure, measuredOutcome, sameScope } from '../../../src/core/scoring/find-measure.ts';
import { made } from './advice/made-input.ts';

const whole = made('tap-spread', 2, 1);
const left = made('tap-spread', 3, 1, { hand: 'L' });

describe('findMeasure', () => {
  it('finds the whole take unless a part is asked for', () => {
    expect(findMeasure([left, whole], 'tap-spread')).toBe(whole);
    expect(findMeasure([left, whole], 'tap-spread', { hand: 'L' })).toBe(left);
    expect(findMeasure([left], 'tap-spread')).toBeUndefined();
  });
});

describe('measuredOutcome', () => {
  it('passes over what was refused', () => {
    const refused = {
      ...whole,
      outcome: { state: 'not-measurable' as const, reason: { code: 'x', facts: {} } },
    };
    expect(measuredOutcome([refused], 'tap-spread')).toBeUndefined();
    expect(measuredOutcome([left], 'tap-spread', { hand: 'L' })?.value).toBe(3);
  });
});

describe('sameScope', () => {
  it('compares every key', () => {
    expect(sameScope({ line: 0, hand: 'R' }, { hand: 'R', line: 0 })).toBe(true);
    expect(sameScope({ line: 0 }, { line: 0, repeat: 0 })).toBe(false);
  });
});
