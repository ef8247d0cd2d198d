import type { TakeResult } from '../core/result/take-result.ts';
import type { ChartEntry } from './chart-entry.ts';
import { clockTime } from './clock-time.ts';
import { plugins, scale, still, timeScale } from './frame.ts';
import { levelScale } from './level-scale.ts';
import type { Look } from './look.ts';
import { strokeWords } from './stroke-words.ts';
import { pointsShown, thinOut } from './thin-out.ts';

/** Decibels under the loudest that are drawn at most. Our judgement. */
const depthDb = 60;

const states = {
  graded: 'graded',
  abandoned: 'given up and played again',
  surplus: 'played once more than asked',
} as const;

type Run = TakeResult['segments'][number];

/** Points of the outline at most: one for every two or three pixels of a wide page. */
const outlinePoints = 400;

/** The recording's outline, dB below full scale, floored. */
function outline({ recording }: TakeResult) {
  const { duration } = recording;
  const each = Math.ceil(recording.envelope.length / outlinePoints) || 1;
  const envelope = Array.from({ length: Math.ceil(recording.envelope.length / each) }, (_, i) =>
    recording.envelope.slice(i * each, (i + 1) * each).reduce((most, level) => Math.max(most, level), 0),
  );
  const top = envelope.reduce((most, level) => Math.max(most, level), 0);
  const floor = 20 * Math.log10(Math.max(top, 1e-5)) - depthDb;
  const points = envelope.map((level, i) => ({
    x: ((i + 0.5) * duration) / envelope.length,
    y: Math.max(floor, 20 * Math.log10(Math.max(level, 1e-6))),
  }));
  return { points, floor, top: floor + depthDb };
}

/** Runs of a state as bars at a height. */
function bars(runs: readonly Run[], y: number, look: Look) {
  const colours = {
    graded: look.palette.first,
    abandoned: look.palette.second,
    surplus: look.palette.second,
  };
  return (['graded', 'abandoned', 'surplus'] as const).flatMap((state) => {
    const own = runs.filter((run) => run.state === state);
    if (own.length === 0) return [];
    return [
      {
        label: states[state],
        data: own.flatMap(({ from, to }) => [
          { x: from, y },
          { x: Math.max(to, from), y },
          { x: to, y: Number.NaN },
        ]),
        showLine: true,
        order: 2,
        pointRadius: 0,
        pointHitRadius: 6,
        pointStyle: 'line' as const,
        borderColor: colours[state],
        backgroundColor: colours[state],
        borderWidth: state === 'graded' ? 8 : 4,
        borderDash: state === 'surplus' ? [3, 3] : [],
      },
    ];
  });
}

function ticks({ strokes }: TakeResult, y: number, look: Look) {
  const kinds = [
    ['strokes of the exercise', (role: string) => role === 'matched'],
    ['other strokes', (role: string) => role !== 'matched'],
  ] as const;
  return kinds.flatMap(([label, belongs], i) => {
    const all = strokes.time.flatMap((x, stroke) =>
      belongs(strokes.role[stroke]!) ? [{ x, y, stroke }] : [],
    );
    if (all.length === 0) return [];
    const colour = i === 0 ? look.palette.ink : look.palette.second;
    return [
      {
        label,
        data: [...thinOut(all, pointsShown)],
        order: 1,
        pointStyle: i === 0 ? ('line' as const) : ('crossRot' as const),
        rotation: i === 0 ? 90 : 0,
        pointRadius: 5,
        pointHoverRadius: 8,
        pointHitRadius: 4,
        borderColor: colour,
        backgroundColor: colour,
        borderWidth: 1.5,
      },
    ];
  });
}

/** The whole recording: its outline, every stroke as a tick over it, and a bar under what was graded. */
export const recordingOverview: ChartEntry = {
  id: 'recording-overview',
  question: 'What in the recording was graded?',
  needs: 'a recording with sound in it',
  wide: true,
  draw: (result, look) => {
    const { points, floor, top } = outline(result);
    if (points.length === 0 || result.segments.length === 0) return null;
    const plain = levelScale(look, 'peak in dB');
    return {
      type: 'scatter',
      data: {
        datasets: [
          ...ticks(result, top + 6, look),
          ...bars(result.segments, floor - 4, look),
          {
            label: 'sound of the recording',
            data: points,
            showLine: true,
            order: 3,
            pointRadius: 0,
            pointHitRadius: 0,
            pointStyle: 'rect',
            borderColor: look.palette.quiet,
            backgroundColor: look.palette.grid,
            borderWidth: 1,
            fill: 'start',
          },
        ],
      },
      options: {
        ...still,
        scales: {
          x: { ...timeScale(look, 0, result.recording.duration), grid: { display: false } },
          y: {
            ...scale(look, 'peak in dB'),
            type: 'linear',
            min: floor - 8,
            max: top + 12,
            afterBuildTicks: (axis) => {
              const highest = 20 * Math.floor(Math.min(0, top + 12) / 20);
              axis.ticks = [0, 1, 2, 3]
                .map((i) => ({ value: highest - 20 * i }))
                .filter(({ value }) => value > floor);
            },
            ticks: plain.ticks,
          },
        },
        plugins: plugins<'scatter'>(look, recordingOverview.question, (item) => {
          const { stroke, x } = item.raw as { stroke?: number; x: number };
          if (stroke !== undefined) return strokeWords(result, stroke);
          return `${item.dataset.label}: ${clockTime(x, 1)}`;
        }),
      },
    } as ReturnType<ChartEntry['draw']>;
  },
  text: ({ recording, segments, strokes }) => {
    const graded = segments.filter((segment) => segment.state === 'graded');
    const counted = strokes.role.filter((role) => role === 'matched').length;
    const from = graded.map((segment) => clockTime(segment.from)).at(0) ?? 'nowhere';
    const to = graded.map((segment) => clockTime(segment.to)).at(-1) ?? 'nowhere';
    const left = segments.length - graded.length;
    return (
      `The recording of ${clockTime(recording.duration)}: ${counted} of ${strokes.time.length} strokes heard were ` +
      `graded, between ${from} and ${to}. Runs left out as given up or played once more: ${left}.`
    );
  },
  table: ({ segments }) => ({
    head: ['From', 'To', 'What', 'Tempo'],
    rows: segments.map(({ from, to, state, bpm }) => [
      clockTime(from),
      clockTime(to),
      states[state],
      `${bpm.toFixed(1)} beats a minute`,
    ]),
  }),
};
