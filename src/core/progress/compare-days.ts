import { summaryOf } from '../stats/mean-difference.ts';
import { median } from '../stats/median.ts';
import { pooledT } from '../stats/pooled-t.ts';
import { studentTQuantile } from '../stats/student-t-quantile.ts';
import { welchT } from '../stats/welch-t.ts';
import type { ComparedFigure } from './compared-figures.ts';
import { type DatedValue, dayMedians } from './day-medians.ts';
import { daysNeeded } from './days-needed.ts';

/** Two sets of days held against each other in one figure. */
export interface DayComparison {
  readonly figure: string;
  readonly days: readonly [number, number];
  /** Median of the day medians on each side, in the figure's unit; null without takes. */
  readonly typical: readonly [number | null, number | null];
  /** Second against first with 95 % interval: a ratio for spreads, else a difference; null under two days a side. */
  readonly change: { readonly value: number; readonly low: number; readonly high: number } | null;
  /** Before the correction for several figures; null where there are too few days for a verdict. */
  readonly p: number | null;
  /** Days a side that would show a spread a fifth smaller; null for other figures, and where it would take too many. */
  readonly daysForAFifth: number | null;
}

/** A verdict needs this many days on each side. Our judgement. */
export const fewestDays = 3;
const aFifth = 0.2;

/**
 * Day medians before against day medians after. Spreads are compared as logarithms. The p-value is the larger of
 * Welch's and Student's pooled one, since each alone says "change" too often with few days: Welch's where one side
 * has few, the pooled one where the sides scatter differently.
 */
export function compareDays(
  figure: ComparedFigure,
  before: readonly DatedValue[],
  after: readonly DatedValue[],
): DayComparison {
  const sides = [before, after].map((values) => dayMedians(values).map((day) => day.median));
  const [first, second] = sides as [number[], number[]];
  const ratio = figure.scale === 'ratio';
  const scaled = sides.map((values) => (ratio ? values.filter((v) => v > 0).map(Math.log) : values));
  const [a, b] = scaled as [number[], number[]];
  const typical = [first, second].map((values) => (values.length === 0 ? null : median(values)));
  const common = {
    figure: figure.id,
    days: [a.length, b.length] as const,
    typical: [typical[0]!, typical[1]!] as const,
  };
  if (a.length < 2 || b.length < 2) return { ...common, change: null, p: null, daysForAFifth: null };

  const [x, y] = [summaryOf(a), summaryOf(b)];
  const welch = welchT(y, x);
  const pooled = pooledT(y, x);
  const half = Math.max(
    ...[welch, pooled].map(({ se, degrees }) => se * studentTQuantile(0.975, Math.max(1, degrees))),
  );
  const back = (value: number) => (ratio ? Math.exp(value) : value);
  const change = {
    value: back(welch.difference),
    low: back(welch.difference - half),
    high: back(welch.difference + half),
  };
  const sd = Math.sqrt(((x.n - 1) * x.sd ** 2 + (y.n - 1) * y.sd ** 2) / (x.n + y.n - 2));
  const enough = a.length >= fewestDays && b.length >= fewestDays;
  return {
    ...common,
    change,
    p: enough ? Math.max(welch.p, pooled.p) : null,
    daysForAFifth: ratio && sd > 0 ? daysNeeded(Math.log(1 - aFifth), sd) : null,
  };
}
