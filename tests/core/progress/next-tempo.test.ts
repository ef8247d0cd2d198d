import { describe, expect, it } from 'vitest';
import { dayNumber } from '../../../src/core/progress/day-number.ts';
import { nextTempo, type PastTake } from '../../../src/core/progress/next-tempo.ts';
import type { Scores } from '../../../src/core/scoring/score-take.ts';

const today = dayNumber('2026-03-20');
const daysAgo = (day: string) => today - dayNumber(day);
const score = (value: number) => ({ score: value, low: value, high: value, word: 'secure' as const });
const scores = (value: number): Scores => ({
  rubric: 'steady',
  overall: score(value),
  dimensions: ['evenness', 'dynamics'].map((id) => ({ id, score: score(value), measures: [] })),
});
const take = (day: string, bpm: number, weakest: number): PastTake => ({
  day,
  bpm,
  weakest,
  scores: scores(weakest),
  fading: false,
});
const next = (takes: PastTake[], discomfort = false) => nextTempo(takes, { discomfort, daysAgo });

describe('nextTempo', () => {
  it('goes up when two days were clean at that tempo', () => {
    expect(next([take('2026-03-17', 100, 90), take('2026-03-19', 100, 92)])).toEqual({
      code: 'tempo-up',
      facts: { bpm: 100, fromBpm: 104, toBpm: 106 },
    });
  });

  it('waits for a second day', () => {
    expect(next([take('2026-03-19', 100, 92), take('2026-03-19', 100, 95)]).code).toBe(
      'tempo-needs-second-day',
    );
    expect(next([take('2026-03-17', 80, 92), take('2026-03-19', 100, 95)]).code).toBe(
      'tempo-needs-second-day',
    );
    expect(next([take('2026-01-17', 100, 92), take('2026-03-19', 100, 95)]).code).toBe(
      'tempo-needs-second-day',
    );
  });

  it('stays, goes down, rests', () => {
    expect(next([take('2026-03-19', 100, 70)]).code).toBe('tempo-stay');
    expect(next([take('2026-03-19', 100, 40)])).toEqual({
      code: 'tempo-down',
      facts: { bpm: 100, toBpm: 90 },
    });
    expect(next([{ ...take('2026-03-19', 100, 95), fading: true }]).code).toBe('tempo-after-rest');
  });

  it('starts anew under the cleanest tempo after a month, at 80 without any', () => {
    expect(next([take('2026-01-05', 120, 90)])).toEqual({
      code: 'tempo-start',
      facts: { fromBpm: 102, toBpm: 108 },
    });
    expect(next([])).toEqual({ code: 'tempo-start', facts: { fromBpm: 80, toBpm: 80 } });
  });

  it('starts under the tempo tried last where no tempo was clean, scored or not', () => {
    const below100 = { code: 'tempo-start-slower', facts: { bpm: 100, fromBpm: 85, toBpm: 90 } };
    expect(next([take('2026-01-05', 100, 70)])).toEqual(below100);
    expect(nextTempo([], { discomfort: false, daysAgo, triedBpm: 100 })).toEqual(below100);
    // A slow player isn't sent up to 80.
    expect(next([take('2026-01-05', 50, 70)]).facts).toMatchObject({ fromBpm: 43, toBpm: 45 });
  });

  it('stops for discomfort, whatever was played', () => {
    for (const takes of [[], [take('2026-03-17', 100, 90), take('2026-03-19', 100, 92)]])
      expect(next(takes, true)).toEqual({ code: 'tempo-waits-for-discomfort', facts: {} });
  });
});
