import { mannKendall } from '../stats/mann-kendall.ts';
import { theilSen } from '../stats/theil-sen.ts';
import type { ComparedFigure } from './compared-figures.ts';
import { type DatedValue, dayMedians } from './day-medians.ts';
import { dayNumber } from './day-number.ts';

export interface DayTrend {
  readonly days: number;
  /** From the first day to the last, in weeks. */
  readonly weeks: number;
  /** Change a week with 95 % interval: a factor for spreads, else in the figure's unit; null where there is none. */
  readonly perWeek: { readonly value: number; readonly low: number; readonly high: number } | null;
  /** Mann–Kendall, two-sided; null where there is none. */
  readonly p: number | null;
  readonly verdict: 'falling' | 'rising' | 'no-clear-trend' | 'too-few-days';
}

/** Four days can't reach 5 % in either direction: the exact two-sided p of four in order is 2/24. */
export const fewestTrendDays = 5;
/** The newest days that are looked at; the pairs of more would take too long for what they add. */
const mostTrendDays = 730;

/**
 * Whether a figure moves over weeks: Mann–Kendall on day medians, exact up to 49 days without ties, and Theil–Sen's
 * slope with Sen's interval (1968), spreads as logarithms. Needs five days.
 */
export function trendOverDays(figure: ComparedFigure, values: readonly DatedValue[]): DayTrend {
  const ratio = figure.scale === 'ratio';
  const days = dayMedians(values)
    .filter(({ median }) => !ratio || median > 0)
    .slice(-mostTrendDays);
  const numbers = days.map(({ day }) => dayNumber(day));
  const inWeeks = numbers.map((number) => (number - numbers[0]!) / 7);
  const weeks = inWeeks.at(-1) ?? 0;
  const nothing = { days: days.length, weeks, perWeek: null, p: null, verdict: 'too-few-days' } as const;
  if (days.length < fewestTrendDays) return nothing;
  const y = days.map(({ median }) => (ratio ? Math.log(median) : median));
  const { slope, low, high } = theilSen(inWeeks, y);
  const { p, s } = mannKendall(y);
  const back = (value: number) => (ratio ? Math.exp(value) : value);
  // Where most days are alike, as at 100 %, the few others have an order, but the week brings no change.
  const verdict = p < 0.05 && slope !== 0 ? (s < 0 ? 'falling' : 'rising') : 'no-clear-trend';
  return {
    days: days.length,
    weeks,
    perWeek: { value: back(slope), low: back(low), high: back(high) },
    p,
    verdict,
  };
}
