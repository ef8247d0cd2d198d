import type { Hand } from '../core/exercise/sheet.ts';
import type { TakeResult } from '../core/result/take-result.ts';
import { askedRatio } from './asked-ratio.ts';
import type { ChartEntry, ChartTable } from './chart-entry.ts';
import { clockTime } from './clock-time.ts';
import { plugins, scale, still, timeScale, withoutHelpers } from './frame.ts';
import { type GradedStroke, gradedStrokes } from './graded-strokes.ts';
import type { Look } from './look.ts';
import { spreadOf } from './spread-of.ts';
import { decibels } from './stroke-words.ts';

/** Strokes that one point of the curve rests on, and how many a hand needs for a curve of its own. Our judgement. */
const windowStrokes = 24;
/** Accents and taps that a window must hold. */
const fewestOfEach = 3;
/** Points of a curve at most. */
const pointsOfCurve = 120;

interface Course {
  readonly hand: Hand | null;
  readonly label: string;
  readonly points: readonly { readonly x: number; readonly y: number }[];
}

function curve(strokes: readonly GradedStroke[]): Course['points'] {
  const last = strokes.length - windowStrokes;
  if (last < 0) return [];
  const stride = Math.max(1, Math.ceil(last / pointsOfCurve));
  const starts = Array.from({ length: Math.floor(last / stride) + 1 }, (_, i) => i * stride);
  if (starts.at(-1) !== last) starts.push(last);
  return starts.flatMap((start) => {
    const own = strokes.slice(start, start + windowStrokes);
    const accents = spreadOf(own.filter((s) => s.accent).map((s) => s.levelDb));
    const taps = spreadOf(own.filter((s) => !s.accent).map((s) => s.levelDb));
    if (accents === null || taps === null || Math.min(accents.count, taps.count) < fewestOfEach) return [];
    return [{ x: (own[0]!.time + own.at(-1)!.time) / 2, y: accents.middle - taps.middle }];
  });
}

/** The curve of both hands together, and of each hand where hands are told. */
function courses(result: TakeResult): Course[] {
  const strokes = gradedStrokes(result);
  const kinds: readonly (readonly [Hand | null, string])[] = [
    [null, 'both hands'],
    ['R', 'right hand'],
    ['L', 'left hand'],
  ];
  const found = kinds.map(([hand, label]) => ({
    hand,
    label,
    points: curve(hand === null ? strokes : strokes.filter((stroke) => stroke.hand === hand)),
  }));
  return found[0]!.points.length < 2 ? [] : found.filter((course) => course.points.length > 1);
}

/** The band asked for over the time of each line, as a lower and an upper edge. */
function bandEdges(result: TakeResult) {
  const strokes = gradedStrokes(result);
  const edges: { x: number; min: number; max: number }[] = [];
  strokes.forEach((stroke, i) => {
    const { minDb, maxDb } = askedRatio(result, result.slots.line[stroke.slot]!);
    const before = edges.at(-1);
    if (before !== undefined && (before.min !== minDb || before.max !== maxDb)) {
      edges.push({ ...before, x: stroke.time }, { x: stroke.time, min: minDb, max: maxDb });
    }
    if (i === 0 || i === strokes.length - 1) edges.push({ x: stroke.time, min: minDb, max: maxDb });
  });
  return edges;
}

function band(result: TakeResult, look: Look) {
  const edges = bandEdges(result);
  const side = (label: string, y: (edge: (typeof edges)[number]) => number, fill: string | false) => ({
    label,
    data: edges.map((edge) => ({ x: edge.x, y: y(edge) })),
    showLine: true,
    order: 3,
    pointRadius: 0,
    pointHitRadius: 0,
    pointStyle: 'rect' as const,
    borderColor: look.palette.grid,
    backgroundColor: look.palette.grid,
    borderWidth: 0,
    fill,
  });
  return [side('band asked for', (e) => e.max, '+1'), side('', (e) => e.min, false)];
}

/** Accent-to-tap ratio in windows along the take, dB, the whole and each hand, before the band asked for. */
export const ratioCourse: ChartEntry = {
  id: 'ratio-course',
  question: 'Do the accents stand out as far at the end as at the start?',
  needs: `more than ${windowStrokes} graded strokes, accents and taps among them throughout`,
  draw: (result, look) => {
    const found = courses(result);
    if (found.length === 0) return null;
    const { palette } = look;
    const styles = {
      both: {
        borderColor: palette.ink,
        borderWidth: 3,
        borderDash: [] as number[],
        pointStyle: 'line' as const,
      },
      R: {
        borderColor: palette.first,
        borderWidth: 2,
        borderDash: [] as number[],
        pointStyle: 'line' as const,
      },
      L: { borderColor: palette.second, borderWidth: 2, borderDash: [6, 4], pointStyle: 'line' as const },
    };
    const times = gradedStrokes(result).map((stroke) => stroke.time);
    const plain = scale(look, 'accents above taps, dB');
    const common = plugins<'scatter'>(look, ratioCourse.question, (item) => {
      const { x, y } = item.raw as { x: number; y: number };
      return `${item.dataset.label}: accents ${y.toFixed(1)} dB above taps round ${clockTime(x)}`;
    });
    const legend = { ...common.legend, labels: { ...common.legend.labels, pointStyleWidth: 28 } };
    const parts = withoutHelpers({ ...common, legend });
    return {
      type: 'scatter',
      data: {
        datasets: [
          ...found.map(({ hand, label, points }) => ({
            label,
            data: [...points],
            showLine: true,
            order: hand === null ? 1 : 2,
            pointRadius: 0,
            pointHitRadius: 10,
            ...styles[hand ?? 'both'],
          })),
          ...band(result, look),
        ],
      },
      options: {
        ...still,
        scales: {
          x: timeScale(look, times[0]!, times.at(-1)!),
          y: { ...plain, type: 'linear', suggestedMin: 0, ticks: { ...plain.ticks, maxTicksLimit: 8 } },
        },
        plugins: parts,
      },
    } as ReturnType<ChartEntry['draw']>;
  },
  text: (result) => {
    const parts = courses(result).map(({ label, points }) => {
      const [first, last] = [points[0]!, points.at(-1)!];
      return `${label} ${first.y.toFixed(1)} dB at the start, ${last.y.toFixed(1)} dB at the end`;
    });
    return `How far the accents stand above the taps along the take, ${windowStrokes} strokes a point: ${parts.join('; ')}.`;
  },
  table: (result): ChartTable => ({
    head: ['Hand', 'At the start', 'Least', 'Most', 'At the end'],
    rows: courses(result).map(({ label, points }) => {
      const spread = spreadOf(points.map((point) => point.y))!;
      const figures = [points[0]!.y, spread.lowest, spread.highest, points.at(-1)!.y];
      return [label, ...figures.map(decibels)];
    }),
  }),
};
