import type { ChartConfiguration } from 'chart.js';
import type { TakeResult } from '../core/result/take-result.ts';
import { deviationTick } from './deviation-scale.ts';
import { plugins, scale, still } from './frame.ts';
import { gradedStrokes } from './graded-strokes.ts';
import { binWidth, histogram } from './histogram.ts';
import { type Lane, lanes } from './lanes.ts';
import type { Look } from './look.ts';
import { spreadOf } from './spread-of.ts';

export const timingHistogramQuestion = 'How closely does each hand repeat itself on each partial?';

/** Distances from even that can be named on the scale, ms: one early, one late, so that narrow pictures hold them. */
const namedReaches = [10, 20, 30, 40, 60, 80, 100, 150, 200, 300, 400];

/** Height of the tallest bin, lanes being 1 apart. */
const tallest = 0.86;

/**
 * How often each deviation occurs, ms, one lane a partial and hand, all to the same scale of shares: the narrower
 * the hill, the more even; the further from the middle, the earlier or later. Null where nothing was measured.
 */
export function timingHistogram(result: TakeResult, look: Look): ChartConfiguration<'scatter'> | null {
  const found = lanes(gradedStrokes(result), { byHand: true });
  if (found.length === 0) return null;
  const { reach, width } = binsFor(found);
  const hills = found.map((lane) => histogramOf(lane, width, reach));
  const most = Math.max(...hills.map((hill) => Math.max(...hill.shares)));
  const edge = (Math.ceil(reach / width) + 0.5) * width;
  const named = namedReaches.findLast((ms) => ms <= 0.85 * edge) ?? edge;
  const plain = scale(look, 'milliseconds from the even place');
  return {
    type: 'scatter',
    data: {
      datasets: found.map((lane, i) => {
        const base = found.length - 1 - i;
        const left = lane.label.endsWith('left');
        const { first, second, firstArea, secondArea } = look.palette;
        return {
          label: lane.label,
          data: steps(hills[i]!, base, tallest / most),
          showLine: true,
          borderColor: left ? second : first,
          backgroundColor: left ? secondArea : firstArea,
          borderDash: left ? [5, 3] : [],
          borderWidth: 2,
          pointRadius: 0,
          pointHitRadius: 8,
          fill: { value: base },
        };
      }),
    },
    options: {
      ...still,
      scales: {
        x: {
          ...plain,
          type: 'linear',
          min: -edge,
          max: edge,
          afterBuildTicks: (axis) => {
            axis.ticks = [-1, -0.5, 0, 0.5, 1].map((share) => ({ value: share * named }));
          },
          ticks: {
            ...plain.ticks,
            autoSkip: false,
            callback: (value) => (Math.abs(Number(value)) === named / 2 ? '' : deviationTick(value)),
          },
          grid: {
            color: ({ tick }) => (tick?.value === 0 ? look.palette.ink : look.palette.grid),
          },
        },
        y: {
          ...scale(look, 'partial and hand'),
          type: 'linear',
          min: -0.06,
          max: found.length,
          afterBuildTicks: (axis) => {
            axis.ticks = found.map((_, i) => ({ value: i }));
          },
          ticks: {
            ...plain.ticks,
            autoSkip: false,
            callback: (value) => laneTick(found[found.length - 1 - Number(value)]),
          },
        },
      },
      plugins: {
        ...plugins<'scatter'>(look, timingHistogramQuestion, (item) => {
          const { count, centre } = item.raw as { count: number; centre: number };
          return `${count} of ${found[item.datasetIndex]!.strokes.length} strokes near ${deviationTick(centre)}`;
        }),
        legend: { display: false },
      },
    },
  };
}

/** Bins narrow enough for the lanes' own spread, and far enough for all strokes but wild ones. */
function binsFor(found: readonly Lane[]): { reach: number; width: number } {
  const apart = found.flatMap(({ strokes }) => {
    const { middle } = spreadOf(strokes.map((stroke) => stroke.deviationMs))!;
    return strokes.map((stroke) => stroke.deviationMs - middle);
  });
  const inside = spreadOf(apart)!;
  const iqr = inside.upperQuarter - inside.lowerQuarter;
  const all = spreadOf(found.flatMap((lane) => lane.strokes.map((stroke) => stroke.deviationMs)))!;
  const far = Math.max(all.highest, -all.lowest);
  const wild = Math.max(all.upperQuarter, -all.lowerQuarter) + 3 * iqr;
  return { reach: Math.max(15, Math.min(far, wild)), width: binWidth(iqr, inside.count) };
}

function laneTick(lane: Lane | undefined): string {
  return lane === undefined ? '' : `${lane.label} (${lane.strokes.length})`;
}

function histogramOf(lane: Lane, width: number, reach: number) {
  const bins = histogram(
    lane.strokes.map((stroke) => stroke.deviationMs),
    width,
    reach,
  );
  return { ...bins, shares: bins.counts.map((count) => count / lane.strokes.length) };
}

/** The outline of a histogram that stands on `base`, with count and centre of the bin on every corner. */
function steps(
  { first, width, counts, shares }: ReturnType<typeof histogramOf>,
  base: number,
  height: number,
) {
  const corners = counts.flatMap((count, i) => {
    const centre = first + i * width;
    const y = base + shares[i]! * height;
    return [
      { x: centre - width / 2, y, count, centre },
      { x: centre + width / 2, y, count, centre },
    ];
  });
  const from = { ...corners[0]!, y: base };
  const to = { ...corners.at(-1)!, y: base };
  return [from, ...corners, to];
}
