import type { TakeResult } from '../core/result/take-result.ts';
import type { ChartEntry } from './chart-entry.ts';
import { clockTime } from './clock-time.ts';
import { plugins, scale, still, timeScale, withoutHelpers } from './frame.ts';
import { type GradedStroke, gradedStrokes } from './graded-strokes.ts';
import { lanes } from './lanes.ts';
import { type Spread, spreadOf } from './spread-of.ts';
import { decibels } from './stroke-words.ts';

/** Strokes of a part at least, and parts at most. Our judgement. */
const strokesOfPart = 24;
const mostParts = 8;

interface Part {
  readonly from: number;
  readonly to: number;
  readonly strokes: number;
  /** Width of the middle half round each partial's and hand's own place, ms. */
  readonly widthMs: Figure | null;
  /** Middle level of the taps, dB. */
  readonly tapsDb: Figure | null;
}

interface Figure {
  readonly value: number;
  /** Half of the range in which it likely lies. */
  readonly half: number;
}

/**
 * Half of the 95 % range of an interquartile range and of a median of `count` values, as a share of the interquartile
 * range, for values that are normally distributed (large-sample variance of quantiles, Cramér 1946, quoted from
 * memory).
 */
const halfOfWidth = (count: number) => (1.96 * 1.166) / Math.sqrt(count);
const halfOfMiddle = (count: number) => (1.96 * 0.929) / Math.sqrt(count);

/** Equal parts of the take in order of time; none where there are too few strokes for two. */
function parts(result: TakeResult): Part[] {
  const strokes = gradedStrokes(result);
  const count = Math.min(mostParts, Math.floor(strokes.length / strokesOfPart));
  if (count < 2) return [];
  const own = new Map<number, number>();
  for (const lane of lanes(strokes, { byHand: true })) {
    const { middle } = spreadOf(lane.strokes.map((stroke) => stroke.deviationMs))!;
    for (const stroke of lane.strokes) own.set(stroke.stroke, stroke.deviationMs - middle);
  }
  return Array.from({ length: count }, (_, i) => {
    const start = Math.round((i * strokes.length) / count);
    return partOf(strokes.slice(start, Math.round(((i + 1) * strokes.length) / count)), own);
  });
}

function partOf(strokes: readonly GradedStroke[], own: ReadonlyMap<number, number>): Part {
  const timing = spreadOf(strokes.flatMap(({ stroke }) => own.get(stroke) ?? []));
  const taps = spreadOf(strokes.filter((stroke) => !stroke.accent).map((stroke) => stroke.levelDb));
  return {
    from: strokes[0]!.time,
    to: strokes.at(-1)!.time,
    strokes: strokes.length,
    widthMs:
      timing === null ? null : { value: widthOf(timing), half: widthOf(timing) * halfOfWidth(timing.count) },
    tapsDb: taps === null ? null : { value: taps.middle, half: widthOf(taps) * halfOfMiddle(taps.count) },
  };
}

const widthOf = ({ lowerQuarter, upperQuarter }: Spread) => upperQuarter - lowerQuarter;
const middle = ({ from, to }: Part) => (from + to) / 2;

/** Scatter of the timing and level of the taps in equal parts of the take, one above the other. */
export const endurance: ChartEntry = {
  id: 'endurance',
  question: 'Does anything give way towards the end?',
  needs: `at least ${2 * strokesOfPart} graded strokes`,
  printed: true,
  draw: (result, look) => {
    const found = parts(result);
    if (found.length === 0) return null;
    const { palette } = look;
    const width = scale(look, 'timing, ms');
    const level = scale(look, 'taps, dB');
    const points = (figure: (part: Part) => Figure | null) =>
      found.flatMap((part) => {
        const own = figure(part);
        return own === null ? [] : [{ x: middle(part), y: own.value, half: own.half }];
      });
    const ranges = (figure: (part: Part) => Figure | null, yAxisID: string, label: string) => ({
      label,
      data: points(figure).flatMap(({ x, y, half }) => [
        { x, y: Math.max(yAxisID === 'y' ? 0 : -200, y - half) },
        { x, y: y + half },
        { x, y: Number.NaN },
      ]),
      yAxisID,
      order: 2,
      showLine: true,
      pointRadius: 0,
      pointHitRadius: 0,
      pointStyle: 'line' as const,
      borderColor: palette.ink,
      backgroundColor: palette.ink,
      borderWidth: 2,
    });
    const style = { showLine: true, pointRadius: 5, pointHoverRadius: 7, borderWidth: 2 };
    return {
      type: 'scatter',
      data: {
        datasets: [
          {
            ...style,
            label: 'width of the middle half of the timing',
            data: points((part) => part.widthMs),
            yAxisID: 'y',
            pointStyle: 'rect',
            borderColor: palette.first,
            backgroundColor: palette.first,
          },
          {
            ...style,
            label: 'middle level of the taps',
            data: points((part) => part.tapsDb),
            yAxisID: 'levels',
            pointStyle: 'circle',
            borderDash: [6, 4],
            borderColor: palette.second,
            backgroundColor: palette.second,
          },
          ranges((part) => part.widthMs, 'y', 'where it likely lies'),
          ranges((part) => part.tapsDb, 'levels', ''),
        ],
      },
      options: {
        ...still,
        scales: {
          x: timeScale(look, found[0]!.from, found.at(-1)!.to),
          levels: {
            ...level,
            type: 'linear',
            position: 'left',
            stack: 'parts',
            offset: true,
            grace: 2,
            ticks: { ...level.ticks, maxTicksLimit: 5, callback: (v) => `${v}`.replace('-', '\u2212') },
          },
          y: {
            ...width,
            type: 'linear',
            position: 'left',
            stack: 'parts',
            offset: true,
            min: 0,
            ticks: { ...width.ticks, maxTicksLimit: 5 },
          },
        },
        plugins: withoutHelpers(
          plugins<'scatter'>(look, endurance.question, (item) => {
            const { x, y } = item.raw as { x: number; y: number };
            const figure = item.dataset.label?.startsWith('width') ? `${y.toFixed(1)} ms` : decibels(y);
            return `${item.dataset.label}: ${figure} round ${clockTime(x)}`;
          }),
        ),
      },
    } as ReturnType<ChartEntry['draw']>;
  },
  text: (result) => {
    const found = parts(result);
    const [first, last] = [found[0]!, found.at(-1)!];
    const words = [
      ...(first.widthMs === null || last.widthMs === null
        ? []
        : [
            `the middle half of the timing is ${first.widthMs.value.toFixed(1)} ms wide in the first and ${last.widthMs.value.toFixed(1)} ms in the last`,
          ]),
      ...(first.tapsDb === null || last.tapsDb === null
        ? []
        : [
            `the taps lie at ${decibels(first.tapsDb.value)} in the first and ${decibels(last.tapsDb.value)} in the last`,
          ]),
    ];
    const said = words.length === 0 ? 'neither timing nor taps can be followed' : words.join('; ');
    return `The take in ${found.length} equal parts: ${said}.`;
  },
  table: (result) => ({
    head: ['Part', 'Strokes', 'Middle half of the timing', 'Middle of the taps'],
    rows: parts(result).map(({ from, to, strokes, widthMs, tapsDb }) => [
      `${clockTime(from)} to ${clockTime(to)}`,
      `${strokes}`,
      widthMs === null
        ? 'not measured'
        : `${widthMs.value.toFixed(1)} ms wide, give or take ${widthMs.half.toFixed(1)}`,
      tapsDb === null ? 'no taps' : `${decibels(tapsDb.value)}, give or take ${tapsDb.half.toFixed(1)}`,
    ]),
  }),
};
