import type { ChartConfiguration } from 'chart.js';
import { capital, rounded } from '../../core/result/figures.ts';
import type { ChartTable } from '../chart-entry.ts';
import { laneScale, plugins, scale, still, withoutHelpers } from '../frame.ts';
import type { Look } from '../look.ts';

/** A figure with the range that is drawn round it. */
export interface Ranged {
  readonly mid: number;
  readonly low: number;
  readonly high: number;
  readonly strokes: number;
}

/** The same figures of two takes side by side, lane by lane. Untrusted words may stand in labels. */
export interface PairLanes {
  readonly kind: 'pair-lanes';
  readonly id: string;
  readonly question: string;
  /** Title of the scale, with its unit. */
  readonly up: string;
  readonly unit: string;
  /** Title under the lanes. */
  readonly across: string;
  /** What the range is: the middle half of strokes, or the 95 % interval. */
  readonly range: string;
  readonly names: readonly [string, string];
  readonly lanes: readonly {
    readonly label: string;
    readonly first: Ranged | null;
    readonly second: Ranged | null;
  }[];
}

/** Distance of a take's mark from the middle of its lane. */
const aside = 0.17;

/** Two marks a lane, each with a line for its range: the first take a full circle, the second a hollow diamond. */
export function pairLanesChart(data: PairLanes, look: Look): ChartConfiguration<'scatter'> {
  const { palette } = look;
  const { lanes, names, unit } = data;
  const side = (which: 'first' | 'second', shift: number) =>
    lanes.flatMap((lane, i) => {
      const own = lane[which];
      return own === null ? [] : [{ x: i + 1 + shift, own, label: lane.label }];
    });
  const [first, second] = [side('first', -aside), side('second', aside)];
  const dataset = (points: typeof first, name: string, colour: string, full: boolean) => [
    {
      label: name,
      data: points.map(({ x, own, label }) => ({
        x,
        y: own.mid,
        words: `${label}, ${name}: ${rounded(own.mid)} ${unit} (${rounded(own.low)} to ${rounded(own.high)})`,
      })),
      pointStyle: (full ? 'circle' : 'rectRot') as 'circle' | 'rectRot',
      pointRadius: 7,
      borderColor: colour,
      borderWidth: 2,
      backgroundColor: full ? colour : palette.paper,
      order: 1,
    },
    {
      label: '',
      data: points.flatMap(({ x, own }) => [
        { x, y: own.low },
        { x, y: own.high },
        { x: Number.NaN, y: Number.NaN },
      ]),
      showLine: true,
      pointRadius: 0,
      pointHitRadius: 0,
      borderColor: colour,
      borderWidth: 3,
      ...(full ? {} : { borderDash: [5, 3] }),
      order: 2,
    },
  ];
  const lane = laneScale(
    look,
    data.across,
    lanes.map(({ label }) => label.split(', ')),
  );
  const parts = plugins<'scatter'>(look, data.question, ({ raw }) => (raw as { words?: string }).words ?? '');
  return {
    type: 'scatter',
    data: {
      datasets: [
        ...dataset(first, names[0], palette.first, true),
        ...dataset(second, names[1], palette.second, false),
      ],
    },
    options: {
      ...still,
      scales: {
        x: { ...lane, grid: { display: false } },
        y: scale(look, data.up),
      },
      plugins: withoutHelpers(parts),
    },
  };
}

/** What the picture shows, lane by lane. */
export function pairLanesText({ lanes, names, unit, range }: PairLanes): string {
  const parts = lanes.map(({ label, first, second }) => {
    const value = (one: Ranged | null) => (one === null ? 'not measured' : `${rounded(one.mid)} ${unit}`);
    return `${label}: ${value(first)}, then ${value(second)}`;
  });
  return `Full circles: ${names[0]}; hollow diamonds: ${names[1]}; the lines are ${range}. ${capital(parts.join('; '))}.`;
}

export function pairLanesTable({ lanes, names, unit, range }: PairLanes): ChartTable {
  const cell = (one: Ranged | null) =>
    one === null ? '–' : `${rounded(one.mid)} ${unit} (${rounded(one.low)} to ${rounded(one.high)})`;
  return {
    head: ['', `${names[0]}, ${range}`, `${names[1]}, ${range}`],
    rows: lanes.map(({ label, first, second }) => [label, cell(first), cell(second)]),
  };
}
