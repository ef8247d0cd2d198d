import type { ChartConfiguration } from 'chart.js';
import { dimensionName, scoreWords } from '../core/result/names.ts';
import type { Score, TakeResult } from '../core/result/take-result.ts';
import { nearlyScore, secureScore, shownScore } from '../core/scoring/score-curve.ts';
import { plugins, scale, still } from './frame.ts';
import type { Look } from './look.ts';

export const scoreOverviewQuestion = 'What is secure, and what needs work?';

/** The scores of a take, the whole first, with the names people read. Empty where nothing is scored. */
export function namedScores({ scores }: TakeResult): { readonly name: string; readonly score: Score }[] {
  if (scores === null) return [];
  return [
    { name: 'All together', score: scores.overall },
    ...scores.dimensions.map(({ id, score }) => ({ name: dimensionName(id), score })),
  ];
}

/** A bar a score, 0 … 100, with its interval as a thin line and its word beside its name. Null without scores. */
export function scoreOverview(result: TakeResult, look: Look): ChartConfiguration<'bar'> | null {
  const named = namedScores(result);
  if (named.length === 0) return null;
  const { palette } = look;
  const words: Record<number, string> = { [nearlyScore]: 'nearly', [secureScore]: 'secure' };
  const plain = scale(look, '');
  return {
    type: 'bar',
    data: {
      labels: named.map(({ name, score }) => [name, scoreWords[score.word]]),
      datasets: [
        {
          label: 'interval',
          data: named.map(({ score }): [number, number] => [score.low, score.high]),
          backgroundColor: palette.ink,
          barThickness: 3,
          grouped: false,
          order: 1,
          pointStyle: 'line',
        },
        {
          label: 'score',
          data: named.map(({ score }): [number, number] => [0, score.score]),
          backgroundColor: palette.firstArea,
          borderColor: palette.first,
          borderWidth: named.map((_, i) => (i === 0 ? 3 : 1.5)),
          borderSkipped: false,
          barPercentage: 0.62,
          grouped: false,
          order: 2,
        },
      ],
    },
    options: {
      ...still,
      indexAxis: 'y',
      scales: {
        x: {
          ...plain,
          type: 'linear',
          min: 0,
          max: 100,
          afterBuildTicks: (axis) => {
            axis.ticks = [0, nearlyScore, secureScore, 100].map((value) => ({ value }));
          },
          ticks: {
            ...plain.ticks,
            autoSkip: false,
            callback: (value) =>
              words[Number(value)] === undefined ? `${value}` : [`${value}`, words[Number(value)]!],
          },
          grid: {
            color: ({ tick }) => (words[tick?.value ?? 0] === undefined ? palette.grid : palette.quiet),
          },
        },
        y: {
          ...plain,
          grid: { display: false },
          ticks: { ...plain.ticks, color: palette.ink, autoSkip: false },
        },
      },
      plugins: {
        ...plugins<'bar'>(look, scoreOverviewQuestion, (item) => {
          const { name, score } = named[item.dataIndex]!;
          const [low, high] = [Math.round(score.low), Math.round(score.high)];
          return `${name}: ${shownScore(score.score)}, ${scoreWords[score.word]} (between ${low} and ${high})`;
        }),
        legend: { display: false },
      },
    },
  };
}
