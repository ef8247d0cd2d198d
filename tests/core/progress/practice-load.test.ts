import { describe, expect, it } from 'vitest';
import { dayOf } from '../../../src/core/progress/day-number.ts';
import { type PracticeEntry, practiceLoad } from '../../../src/core/progress/practice-load.ts';

const entry = (day: string, minutes: number, kind: PracticeEntry['kind'] = 'recorded'): PracticeEntry => ({
  day,
  minutes,
  kind,
  ...(kind === 'recorded' ? { strokes: { R: 10, L: 8, untold: 1 } } : {}),
});

describe('practiceLoad', () => {
  it('sums days and weeks, recorded and logged apart, strokes by hand', () => {
    const load = practiceLoad([
      entry('2026-03-11', 5),
      entry('2026-03-09', 10),
      entry('2026-03-11', 20, 'logged'),
      entry('2026-03-29', 7),
    ]);
    expect(load.logged).toBe(true);
    expect(load.days.map(({ from }) => from)).toEqual(['2026-03-09', '2026-03-11', '2026-03-29']);
    expect(load.days[1]).toEqual({
      from: '2026-03-11',
      recordedMinutes: 5,
      loggedMinutes: 20,
      strokes: { R: 10, L: 8, untold: 1 },
    });
    expect(load.weeks.map(({ from, recordedMinutes }) => [from, recordedMinutes])).toEqual([
      ['2026-03-09', 15],
      ['2026-03-16', 0],
      ['2026-03-23', 7],
    ]);
    expect(load.weeks[0]!.strokes).toEqual({ R: 20, L: 16, untold: 2 });
  });

  it('states a week of half as much again and half an hour more beside the four before it', () => {
    const weeks = (minutes: readonly number[]) =>
      practiceLoad(minutes.map((m, i) => entry(dayOf(20_003 + 7 * i), m))).jumps;
    expect(weeks([60, 60, 60, 60, 90])).toMatchObject([{ minutes: 90, before: 60, weeksBefore: 4 }]);
    expect(weeks([60, 60, 60, 60, 89])).toEqual([]);
    expect(weeks([10, 10, 30])).toEqual([]);
    expect(weeks([200])).toEqual([]);
    expect(weeks([20, 200])).toMatchObject([{ before: 20, weeksBefore: 1 }]);
  });

  it('knows nothing of no practice and refuses nonsense', () => {
    expect(practiceLoad([])).toEqual({ days: [], weeks: [], jumps: [], logged: false });
    expect(() => practiceLoad([entry('2026-03-09', -1)])).toThrow(RangeError);
    expect(() => practiceLoad([entry('today', 1)])).toThrow(RangeError);
  });
});
