import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { comparedFigures } from '../../../src/core/progress/compared-figures.ts';
import { dayOf } from '../../../src/core/progress/day-number.ts';
import { trendOverDays } from '../../../src/core/progress/trend-over-days.ts';

const spread = comparedFigures.find(({ id }) => id === 'timing-spread')!;
const plain = { ...spread, scale: 'difference' } as const;
const start = 20_000;

describe('trendOverDays', () => {
  it('is Theil–Sen and Mann–Kendall on day medians', () => {
    // Sen 1968's own example (x, y), slope 4, as quoted in scipy's tests; days stand for x, so a week is 7 of them.
    const x = [1, 2, 3, 4, 10, 12, 18];
    const y = [9, 15, 19, 20, 45, 55, 78];
    const trend = trendOverDays(
      plain,
      x.map((day, i) => ({ day: dayOf(start + day), value: y[i]! })),
    );
    expect(trend.perWeek!.value).toBeCloseTo(28, 9);
    // All 21 pairs rise: exact two-sided p is 2/7!.
    expect(trend.p).toBeCloseTo(2 / 5040, 12);
    expect(trend).toMatchObject({ verdict: 'rising', days: 7 });
    expect(trend.weeks).toBeCloseTo(17 / 7, 12);
  });

  it('is a factor a week for spreads', () => {
    const values = Array.from({ length: 9 }, (_, week) => ({
      day: dayOf(start + 7 * week),
      value: 10 * 0.95 ** week,
    }));
    const { perWeek, verdict } = trendOverDays(spread, values);
    expect(perWeek!.value).toBeCloseTo(0.95, 12);
    expect(verdict).toBe('falling');
  });

  it('calls nothing a trend whose change a week is nought', () => {
    // At first under 100 % now and then, then always 100 %: p is small, and yet no week is better than the next.
    const values = Array.from({ length: 30 }, (_, i) => ({
      day: dayOf(start + i),
      value: i < 10 && i % 2 === 0 ? 0.97 : 1,
    }));
    const { perWeek, p, verdict } = trendOverDays(plain, values);
    expect(p).toBeLessThan(0.05);
    expect([perWeek!.value, verdict]).toEqual([0, 'no-clear-trend']);
  });

  it('needs five days', () => {
    const four = [1, 2, 3, 4].map((i) => ({ day: dayOf(start + i), value: i }));
    expect(trendOverDays(plain, four)).toMatchObject({
      verdict: 'too-few-days',
      perWeek: null,
      p: null,
      days: 4,
    });
    expect(trendOverDays(plain, [])).toMatchObject({ verdict: 'too-few-days', days: 0, weeks: 0 });
  });

  it('claims a trend in at most one of twenty players without one', () => {
    const random = seeded('no trend');
    const trials = 2000;
    for (const n of [5, 9, 30]) {
      let wrong = 0;
      for (let trial = 0; trial < trials; trial++) {
        const values = Array.from({ length: n }, (_, i) => ({
          day: dayOf(start + 3 * i),
          value: 7 * Math.exp(0.2 * random.normal()),
        }));
        if (trendOverDays(spread, values).verdict !== 'no-clear-trend') wrong++;
      }
      expect(wrong / trials, `${n} days`).toBeLessThanOrEqual(0.05 + 2 * Math.sqrt((0.05 * 0.95) / trials));
    }
  });
});
