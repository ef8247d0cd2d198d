import { describe, expect, it } from 'vitest';
import type { SetUp } from '../../../../src/library/set-up.ts';
import { compareWithKept } from '../../../../src/page/recording/set-up/compare-with-kept.ts';

const now = Date.UTC(2026, 2, 9, 18);
const minute = 60_000;
const kept = (id: string, minutesAgo: number, levelDb: number): SetUp => {
  const hand = { levelDb, spreadDb: 0.5, strokes: 8 };
  const levels = { right: hand, left: hand, noiseFloorDb: -70 };
  const recordedAt = now - minutesAgo * minute;
  return { id, personId: null, recordedAt, day: '2026-03-09', pad: '', sticks: '', device: 'mic', levels };
};
const played = (mean: number) => ({ right: { mean, sd: 0.5, n: 8 }, left: { mean, sd: 0.5, n: 8 } });
const week = 7 * 24 * 60;

describe('compareWithKept', () => {
  it('has nothing to say of the first', () => {
    expect(compareWithKept(played(-20), [], now)).toEqual({ before: null, comparison: null, alike: null });
  });

  it('compares with last week after a try that was different, not with that try', () => {
    const tries = [kept('a minute ago', 1, -28), kept('last week', week, -20)];
    const mended = compareWithKept(played(-20), tries, now);
    expect(mended.comparison?.verdict).toBe('alike');
    expect(mended.alike?.id).toBe('last week');
    const not = compareWithKept(played(-28.2), tries, now);
    expect(not.before?.id).toBe('last week');
    expect(not.comparison?.verdict).toBe('different');
    expect(not.comparison?.shift.value).toBeCloseTo(-8.2, 6);
    // Takes of before and after the second try compare with each other all the same.
    expect(not.alike?.id).toBe('a minute ago');
    expect(compareWithKept(played(-24), tries, now).alike).toBeNull();
  });

  it('compares with the last of another sitting, and with one of this sitting where there is no other', () => {
    const all = [kept('this morning', 9 * 60, -25), kept('last week', week, -20)];
    expect(compareWithKept(played(-20), all, now)).toMatchObject({
      before: { id: 'this morning' },
      comparison: { verdict: 'different' },
      alike: null,
    });
    expect(compareWithKept(played(-20), [kept('just now', 1, -20)], now).alike?.id).toBe('just now');
  });
});
