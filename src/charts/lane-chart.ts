import type { ChartConfiguration } from 'chart.js';
import type { TakeResult } from '../core/result/take-result.ts';
import type { ChartTable } from './chart-entry.ts';
import { laneScale, plugins, still, withoutHelpers } from './frame.ts';
import type { GradedStroke } from './graded-strokes.ts';
import type { Look } from './look.ts';
import { spreadOf } from './spread-of.ts';
import { strokeOrLabel, strokeSets } from './stroke-sets.ts';

/** A stroke with the figure that a lane shows of it. */
interface LaneItem {
  readonly stroke: GradedStroke;
  readonly value: number;
}

/** Figures that belong together, side by side with other lanes. */
export interface FigureLane {
  readonly label: string;
  readonly items: readonly LaneItem[];
}

interface LanePicture {
  readonly question: string;
  /** Title under the lanes. */
  readonly across: string;
  readonly up: NonNullable<NonNullable<ChartConfiguration<'scatter'>['options']>['scales']>[string];
}

/** Share of a lane's width that the take fills, from its first stroke at the left to its last at the right. */
const laneFill = 0.8;

/**
 * Lanes side by side; inside a lane the take runs from left to right, a level line marks the middle figure and a
 * shaded box the middle half. Null without a lane.
 */
export function laneChart(
  result: TakeResult,
  look: Look,
  lanes: readonly FigureLane[],
  { question, across, up }: LanePicture,
): ChartConfiguration<'scatter'> | null {
  if (lanes.length === 0) return null;
  const lane = laneScale(
    look,
    across,
    lanes.map(({ label }) => wrapped(label)),
  );
  return {
    type: 'scatter',
    data: { datasets: [...strokeSets(placed(lanes), look), middles(lanes, look), ...halves(lanes, look)] },
    options: {
      ...still,
      scales: {
        x: { ...lane, grid: { ...lane.grid, offset: true } },
        y: up,
      },
      plugins: withoutHelpers(plugins<'scatter'>(look, question, strokeOrLabel(result))),
    },
  };
}

/** Strokes, middle, middle half and extremes of each lane, with `words` for its figures. */
export function laneTable(
  lanes: readonly FigureLane[],
  [name, lowest, highest]: readonly [string, string, string],
  words: (value: number) => string,
): ChartTable {
  const rows = lanes.map(({ label, items }) => {
    const spread = spreadOf(items.map((item) => item.value))!;
    const half = `${words(spread.lowerQuarter)} to ${words(spread.upperQuarter)}`;
    return [
      label,
      `${spread.count}`,
      words(spread.middle),
      half,
      words(spread.lowest),
      words(spread.highest),
    ];
  });
  return { head: [name, 'Strokes', 'Middle', 'Middle half', lowest, highest], rows };
}

/** The middle figure of a lane. */
export const middleOf = ({ items }: FigureLane): number => spreadOf(items.map((item) => item.value))!.middle;

function placed(lanes: readonly FigureLane[]) {
  const times = lanes.flatMap(({ items }) => [items[0]!.stroke.time, items.at(-1)!.stroke.time]);
  const start = times.reduce((a, b) => Math.min(a, b));
  const length = times.reduce((a, b) => Math.max(a, b)) - start || 1;
  return lanes.map(({ items }, i) =>
    items.map(({ stroke: { time, stroke, accent, hand }, value }) => ({
      x: i + 1 + laneFill * ((time - start) / length - 0.5),
      y: value,
      stroke,
      accent,
      hand,
    })),
  );
}

const line = {
  showLine: true,
  pointRadius: 0,
  pointHoverRadius: 0,
  pointHitRadius: 0,
};

/** A short level line over each lane at its middle, with a gap before the next. */
function middles(lanes: readonly FigureLane[], look: Look) {
  return {
    ...line,
    label: 'middle of the lane',
    data: lanes.flatMap((lane, i) => edge(i, middleOf(lane))),
    order: 1,
    pointStyle: 'line' as const,
    borderColor: look.palette.ink,
    backgroundColor: look.palette.ink,
    borderWidth: 3,
  };
}

/** The boxes of the middle halves: upper edges filled down to the lower ones. */
function halves(lanes: readonly FigureLane[], look: Look) {
  const spreads = lanes.map(({ items }) => spreadOf(items.map((item) => item.value))!);
  const side = (label: string, y: (i: number) => number, fill: string | false) => ({
    ...line,
    label,
    data: lanes.flatMap((_, i) => edge(i, y(i))),
    order: 3,
    pointStyle: 'rect' as const,
    borderWidth: 0,
    borderColor: look.palette.grid,
    backgroundColor: look.palette.grid,
    fill,
  });
  return [
    side('middle half of the lane', (i) => spreads[i]!.upperQuarter, '+1'),
    side('', (i) => spreads[i]!.lowerQuarter, false),
  ];
}

function edge(lane: number, y: number) {
  const half = laneFill / 2 + 0.04;
  return [
    { x: lane + 1 - half, y },
    { x: lane + 1 + half, y },
    { x: lane + 1 + half, y: Number.NaN },
  ];
}

/** A label in lines of at most so many letters, so that lanes' names don't run into one another. */
function wrapped(label: string): string | string[] {
  const lines: string[] = [];
  for (const word of label.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + word.length < 11) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines.length === 1 ? label : lines;
}
