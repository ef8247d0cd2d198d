import type { ChartConfiguration } from 'chart.js';
import { rounded } from '../../core/result/figures.ts';
import type { ChartTable } from '../chart-entry.ts';
import { plugins, scale, still } from '../frame.ts';
import type { Look } from '../look.ts';

/** One figure over days: single takes, the median of each day, and where something about the recording changed. */
export interface DayCourse {
  readonly kind: 'day-course';
  readonly id: string;
  readonly question: string;
  readonly up: string;
  readonly unit: string;
  /** Number of the day since 1970, its name, the take of that day: "take 3 of 5 that day". */
  readonly takes: readonly {
    readonly at: number;
    readonly day: string;
    readonly value: number;
    readonly of: string;
    /** Played under the conditions of the newest take, so that it counts. */
    readonly counts: boolean;
  }[];
  readonly days: readonly { readonly at: number; readonly day: string; readonly median: number }[];
  readonly breaks: readonly { readonly at: number; readonly day: string; readonly what: string }[];
  /** The trend in words. */
  readonly trend: string;
}

/** A day for people, by its number since 1970: "9 Mar". */
export const dayWords = (at: number): string => {
  const date = new Date(at * 86_400_000);
  return `${date.getUTCDate()}\u00a0${months[date.getUTCMonth()]}`;
};
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** Takes as small marks, day medians as a line of large ones, changes of pad, sticks or device as dashed uprights. */
export function dayCourseChart(data: DayCourse, look: Look): ChartConfiguration<'scatter'> {
  const { palette } = look;
  const { takes, days, breaks, unit } = data;
  const values = takes.map(({ value }) => value);
  const [lowest, highest] = [Math.min(...values), Math.max(...values)];
  const pad = Math.max(0.08 * (highest - lowest), 0.01 * Math.abs(highest), 0.1);
  const [low, high] = [lowest - pad, highest + pad];
  const first = Math.min(...takes.map(({ at }) => at));
  const last = Math.max(...takes.map(({ at }) => at));
  const take = (counts: boolean, label: string) => ({
    label,
    data: takes
      .filter((one) => one.counts === counts)
      .map((one) => ({
        x: one.at,
        y: one.value,
        words: `${dayWords(one.at)}, ${one.of}: ${rounded(one.value)} ${unit}`,
      })),
    pointStyle: (counts ? 'circle' : 'cross') as 'circle' | 'cross',
    pointRadius: 3.5,
    borderWidth: 1.5,
    borderColor: palette.quiet,
    backgroundColor: palette.paper,
    order: 2,
  });
  const parts = plugins<'scatter'>(look, data.question, ({ raw }) => (raw as { words?: string }).words ?? '');
  return {
    type: 'scatter',
    data: {
      datasets: [
        {
          label: 'middle of each day',
          data: days.map(({ at, median }) => ({
            x: at,
            y: median,
            words: `${dayWords(at)}, middle of the day: ${rounded(median)} ${unit}`,
          })),
          showLine: true,
          borderWidth: 2,
          borderColor: palette.first,
          backgroundColor: palette.first,
          pointRadius: 6,
          order: 1,
        },
        take(true, 'one take'),
        ...(takes.some(({ counts }) => !counts) ? [take(false, "take that isn't alike, left out")] : []),
        ...breaks.map(({ at, what }) => ({
          label: what,
          data: [
            { x: at - 0.5, y: low },
            { x: at - 0.5, y: high },
          ],
          showLine: true,
          pointRadius: 0,
          pointHitRadius: 0,
          pointStyle: 'line' as const,
          borderWidth: 1.5,
          borderDash: [6, 4],
          borderColor: palette.second,
          backgroundColor: palette.second,
          order: 3,
        })),
      ],
    },
    options: {
      ...still,
      scales: {
        x: {
          ...scale(look, ''),
          type: 'linear',
          min: first - 1.5,
          max: last + 1.5,
          ticks: {
            ...scale(look, '').ticks,
            maxTicksLimit: 6,
            includeBounds: false,
            precision: 0,
            callback: (value) => dayWords(Number(value)),
          },
        },
        y: { ...scale(look, data.up), min: low, max: high },
      },
      plugins: parts,
    },
  };
}

export function dayCourseText({ takes, days, breaks, trend, unit }: DayCourse): string {
  const [first, last] = [days[0], days.at(-1)];
  const span =
    first === undefined || last === undefined
      ? 'No day is like the newest take.'
      : `${takes.length} takes. Middle of the first day ${rounded(first.median)} ${unit}, of the last ${rounded(last.median)} ${unit}: ${trend}.`;
  return [span, ...breaks.map(({ at, what }) => `From ${dayWords(at)}: ${what}.`)].join(' ');
}

export function dayCourseTable({ takes, unit }: DayCourse): ChartTable {
  return {
    head: ['Day', 'Take', unit === '' ? 'Figure' : `Figure, ${unit}`, 'Counts'],
    rows: takes.map(({ day, of, value, counts }) => [
      day,
      of,
      rounded(value),
      counts ? 'yes' : 'no, not alike',
    ]),
  };
}
