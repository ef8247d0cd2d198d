import type { ChartConfiguration } from 'chart.js';
import { rounded } from '../../core/result/figures.ts';
import type { ChartTable } from '../chart-entry.ts';
import { plugins, scale, still } from '../frame.ts';
import type { Look } from '../look.ts';

/** Minutes of practice, week by week. */
export interface PracticeWeeks {
  readonly kind: 'practice-weeks';
  readonly id: string;
  readonly question: string;
  readonly weeks: readonly {
    readonly from: string;
    readonly label: string;
    readonly recorded: number;
    readonly written: number;
    readonly right: number;
    readonly left: number;
  }[];
}

/** Recorded minutes full, minutes written down by hand hollow on top of them. */
export function practiceWeeksChart(data: PracticeWeeks, look: Look): ChartConfiguration<'bar'> {
  const { palette } = look;
  const { weeks } = data;
  const bars = (label: string, minutes: number[], full: boolean) => ({
    label,
    data: minutes,
    stack: 'minutes',
    borderWidth: 1.5,
    pointStyle: 'rect' as const,
    borderColor: full ? palette.first : palette.second,
    backgroundColor: full ? palette.first : palette.paper,
  });
  return {
    type: 'bar',
    data: {
      labels: weeks.map(({ label }) => label),
      datasets: [
        bars(
          'recorded',
          weeks.map(({ recorded }) => recorded),
          true,
        ),
        bars(
          'written down by hand',
          weeks.map(({ written }) => written),
          false,
        ),
      ],
    },
    options: {
      ...still,
      scales: {
        x: { ...scale(look, 'week from'), stacked: true, grid: { display: false } },
        y: { ...scale(look, 'minutes'), stacked: true, min: 0 },
      },
      plugins: plugins<'bar'>(look, data.question, ({ dataset, parsed }) => {
        return `${dataset.label}: ${rounded(parsed.y ?? 0, 0)} minutes`;
      }),
    },
  };
}

export function practiceWeeksText({ weeks }: PracticeWeeks): string {
  const total = ({ recorded, written }: (typeof weeks)[number]) => recorded + written;
  const last = weeks.at(-1);
  const most = weeks.toSorted((a, b) => total(b) - total(a))[0];
  if (last === undefined || most === undefined) return 'No practice is kept.';
  return `Minutes a week. The most, ${rounded(total(most), 0)}, in the week from ${most.label}; in the last week ${rounded(total(last), 0)}.`;
}

export function practiceWeeksTable({ weeks }: PracticeWeeks): ChartTable {
  return {
    head: ['Week from', 'Recorded', 'Written down', 'Strokes right', 'Strokes left'],
    rows: weeks.map(({ from, recorded, written, right, left }) => [
      from,
      `${rounded(recorded)} min`,
      `${rounded(written, 0)} min`,
      `${right}`,
      `${left}`,
    ]),
  };
}
