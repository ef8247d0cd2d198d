import type { ChartConfiguration } from 'chart.js';
import type { TakeResult } from '../core/result/take-result.ts';
import { extent } from '../core/stats/extent.ts';
import { accentTurnTimes } from './accent-turn-times.ts';
import { clockTime } from './clock-time.ts';
import { plugins, scale, still, timeScale } from './frame.ts';
import type { Look } from './look.ts';
import { spreadOf } from './spread-of.ts';
import { pointsShown, thinOut } from './thin-out.ts';

export const tempoCurveQuestion = 'Does the tempo hold from start to end?';

/** Least reach of the scale round the middle tempo: a take that holds its tempo shall look level. Our judgement. */
const leastReach = 0.04;

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Local tempo over the take, BPM, a break between runs, with the asked tempo as a dashed line. Null without one. */
export function tempoCurve(result: TakeResult, look: Look): ChartConfiguration<'scatter'> | null {
  const { tempo } = result;
  if (tempo.time.length === 0) return null;
  const middle = spreadOf(tempo.bpm)!.middle;
  const asked = askedTempo(result);
  const ends = extent([tempo.time[0]!, tempo.time.at(-1)!, ...asked.map((point) => point.x)]);
  const line = { showLine: true, pointRadius: 0, pointHitRadius: 10, pointStyle: 'line' as const };
  const plain = scale(look, 'beats a minute');
  return {
    type: 'scatter',
    data: {
      datasets: [
        {
          ...line,
          label: 'tempo as played',
          data: runs(result),
          borderColor: look.palette.first,
          backgroundColor: look.palette.first,
          borderWidth: 2.5,
        },
        ...(asked.length === 0
          ? []
          : [
              {
                ...line,
                label: 'tempo asked for',
                data: asked,
                borderColor: look.palette.second,
                backgroundColor: look.palette.second,
                borderWidth: 2,
                borderDash: [7, 4],
              },
            ]),
        ...turns(result, look),
      ],
    },
    options: {
      ...still,
      scales: {
        x: timeScale(look, ends.least, ends.most),
        y: {
          ...plain,
          type: 'linear',
          suggestedMin: middle * (1 - leastReach),
          suggestedMax: middle * (1 + leastReach),
          ticks: { ...plain.ticks, maxTicksLimit: 8, precision: 0 },
        },
      },
      plugins: withWideMarks(
        plugins<'scatter'>(look, tempoCurveQuestion, (item) => {
          const { x, y } = item.raw as Point;
          if (item.dataset.label === turnLabel) return `${turnLabel} at ${clockTime(x, 1)}`;
          return `${item.dataset.label}: ${y.toFixed(1)} beats a minute at ${clockTime(x)}`;
        }),
      ),
    },
  };
}

const turnLabel = 'accents turn round';

/** Where the accents leave their partial together: a diamond on the curve. */
function turns(result: TakeResult, look: Look) {
  const { time, bpm } = result.tempo;
  const data = accentTurnTimes(result).map((x) => {
    const after = time.findIndex((one) => one >= x);
    return { x, y: bpm.at(after)! };
  });
  if (data.length === 0) return [];
  return [
    {
      label: turnLabel,
      data,
      pointStyle: 'rectRot' as const,
      pointRadius: 9,
      pointHoverRadius: 10,
      borderColor: look.palette.ink,
      backgroundColor: look.palette.paper,
      borderWidth: 3,
    },
  ];
}

/** Legend marks that are lines, dashed as in the picture. */
function withWideMarks<T extends { legend: { labels: object } }>(parts: T) {
  return {
    ...parts,
    legend: {
      ...parts.legend,
      labels: { ...parts.legend.labels, usePointStyle: false, boxWidth: 36, boxHeight: 0 },
    },
  };
}

/** The curve's points, with a gap between two runs. */
function runs({ tempo }: TakeResult): Point[] {
  const bySegment = new Map<number, Point[]>();
  tempo.time.forEach((x, i) => {
    const segment = tempo.segment[i]!;
    const points = bySegment.get(segment) ?? [];
    points.push({ x, y: tempo.bpm[i]! });
    bySegment.set(segment, points);
  });
  return [...bySegment.values()].flatMap((points) => {
    const shown = thinOut(points, pointsShown);
    return [...shown, { x: shown.at(-1)!.x, y: Number.NaN }];
  });
}

/** The asked tempo over each graded run; a run through several lines has the steps of their tempos. */
function askedTempo({ segments, sheet, slots, strokes }: TakeResult): Point[] {
  const points: Point[] = [];
  for (const segment of segments) {
    if (segment.state !== 'graded') continue;
    for (let line = slots.line[segment.firstSlot]!; line <= slots.line[segment.lastSlot]!; line++) {
      const bpm = sheet.lines[line]?.bpm ?? null;
      const times: number[] = [];
      for (let slot = segment.firstSlot; slot <= segment.lastSlot; slot++) {
        const stroke = slots.stroke[slot] ?? null;
        if (slots.line[slot] === line && stroke !== null) times.push(strokes.time[stroke]!);
      }
      if (bpm === null || times.length === 0) continue;
      points.push(
        { x: times[0]!, y: bpm },
        { x: times.at(-1)!, y: bpm },
        { x: times.at(-1)!, y: Number.NaN },
      );
    }
  }
  return points;
}
