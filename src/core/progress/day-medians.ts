import { median } from '../stats/median.ts';

/** One take's figure on a calendar day, "2026-03-09" by the player's own calendar. */
export interface DatedValue {
  readonly day: string;
  readonly value: number;
}

export interface DayMedian {
  readonly day: string;
  readonly median: number;
  readonly takes: number;
}

/**
 * One value a day, the median of its takes, in order of days: takes of one day share form, place and microphone, so
 * that the day is what is counted, not the take.
 *
 * @example dayMedians([{ day: '2026-03-09', value: 5 }, { day: '2026-03-09', value: 7 }])[0].median // 6
 */
export function dayMedians(values: readonly DatedValue[]): DayMedian[] {
  const days = new Map<string, number[]>();
  for (const { day, value } of values) {
    const list = days.get(day);
    if (list === undefined) days.set(day, [value]);
    else list.push(value);
  }
  return [...days]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([day, list]) => ({ day, median: median(list), takes: list.length }));
}
