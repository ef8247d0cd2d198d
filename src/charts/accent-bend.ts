import type { TakeResult } from '../core/result/take-result.ts';
import type { ChartEntry } from './chart-entry.ts';
import { deviationScale } from './deviation-scale.ts';
import { laneScale, plugins, still } from './frame.ts';
import { listWords } from './list-words.ts';
import { deviationWords } from './stroke-words.ts';

const places = [
  ['before', 'right before an accent'],
  ['on', 'on the accent'],
  ['after', 'right after an accent'],
] as const;

interface Bend {
  readonly label: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly strokes: number;
}

/** The measured shifts round the accent, ms, in the order in which they are played. */
function bends({ measures }: TakeResult): Bend[] {
  return places.flatMap(([place, label]) => {
    const found = measures.find(({ id, scope }) => id === 'accent-bend' && scope.place === place);
    if (found === undefined || found.outcome.state !== 'measured') return [];
    const { value, low, high, strokes } = found.outcome;
    return [{ label, value, low, high, strokes }];
  });
}

/** Shift of the strokes before, on and after an accent against the same partial and hand elsewhere, with its range. */
export const accentBend: ChartEntry = {
  id: 'accent-bend',
  question: 'Does the rhythm bend round the accent?',
  needs:
    'the accent on more than one partial, at least 8 strokes beside it, so that accent and partial can be told apart',
  printed: true,
  draw: (result, look) => {
    const found = bends(result);
    if (found.length === 0) return null;
    const { palette } = look;
    const lane = laneScale(
      look,
      '',
      found.map(({ label }) => halves(label)),
    );
    const ranges = found.flatMap(({ low, high }, i) => [
      { x: i + 1, y: low },
      { x: i + 1, y: high },
      { x: i + 1, y: Number.NaN },
    ]);
    return {
      type: 'scatter',
      data: {
        datasets: [
          {
            label: 'middle shift',
            data: found.map(({ value }, i) => ({ x: i + 1, y: value })),
            order: 1,
            pointStyle: 'rectRot',
            pointRadius: 9,
            pointHoverRadius: 10,
            borderColor: palette.first,
            backgroundColor: palette.first,
          },
          {
            label: 'where it likely lies',
            data: ranges,
            order: 2,
            showLine: true,
            pointRadius: 0,
            pointHitRadius: 0,
            pointStyle: 'line',
            borderColor: palette.ink,
            backgroundColor: palette.ink,
            borderWidth: 3,
          },
        ],
      },
      options: {
        ...still,
        scales: {
          x: { ...lane, ticks: { ...lane.ticks, color: palette.ink }, grid: { display: false } },
          y: {
            ...deviationScale(look),
            title: { ...deviationScale(look).title, text: 'milliseconds of shift' },
          },
        },
        plugins: plugins<'scatter'>(look, accentBend.question, (item) => {
          const bend = found[Math.round((item.raw as { x: number }).x) - 1]!;
          return [bend.label, deviationWords(bend.value), `likely ${range(bend)}`];
        }),
      },
    } as ReturnType<ChartEntry['draw']>;
  },
  text: (result) => {
    const parts = bends(result).map(
      (bend) => `${bend.label} ${deviationWords(bend.value)}, likely ${range(bend)}`,
    );
    return `How far strokes shift round an accent, held against the same partial and hand elsewhere: ${listWords(parts)}.`;
  },
  table: (result) => ({
    head: ['Place', 'Strokes', 'Shift', 'Likely between'],
    rows: bends(result).map((bend) => [
      bend.label,
      `${bend.strokes}`,
      deviationWords(bend.value),
      range(bend),
    ]),
  }),
};

const range = ({ low, high }: Bend) => `${deviationWords(low)} to ${deviationWords(high)}`;

/** A label in two lines, the first as long as the second or a word longer. */
function halves(label: string): string[] {
  const words = label.split(' ');
  const first = Math.ceil(words.length / 2);
  return [words.slice(0, first).join(' '), words.slice(first).join(' ')];
}
