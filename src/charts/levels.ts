import type { ChartConfiguration } from 'chart.js';
import type { TakeResult } from '../core/result/take-result.ts';
import { plugins, type StrokePoint, scale, still, timeScale } from './frame.ts';
import { type GradedStroke, gradedStrokes } from './graded-strokes.ts';
import type { Look } from './look.ts';
import { markStyle, marks } from './marks.ts';
import { spreadOf } from './spread-of.ts';
import { strokeWords } from './stroke-words.ts';
import { shownOf, thinOut } from './thin-out.ts';

export const levelsQuestion = 'Do the accents stand clear of the taps?';

/**
 * Level of every stroke over the take, dB; behind accents and behind taps the band that holds their middle half.
 * Null where nothing was graded.
 */
export function levels(result: TakeResult, look: Look): ChartConfiguration<'scatter'> | null {
  const strokes = gradedStrokes(result);
  if (strokes.length === 0) return null;
  const shown = shownOf(strokes.length);
  const kinds = marks.flatMap((mark) => {
    const data = strokes
      .filter((stroke) => stroke.accent === mark.accent && stroke.hand === mark.hand)
      .map(({ time, levelDb, stroke }) => ({ x: time, y: levelDb, stroke }));
    return data.length === 0
      ? []
      : [
          {
            label: mark.label,
            data: [...thinOut(data, Math.ceil((data.length * shown) / strokes.length))],
            ...markStyle(mark, look.palette, shown),
          },
        ];
  });
  const span: [number, number] = [strokes[0]!.time, strokes.at(-1)!.time];
  const loudness = scale(look, 'level in dB, louder above');
  return {
    type: 'scatter',
    data: {
      datasets: [
        ...kinds,
        ...band(
          'middle half of the accents',
          strokes.filter((s) => s.accent),
          span,
          look.palette.firstArea,
          kinds.length,
        ),
        ...band(
          'middle half of the taps',
          strokes.filter((s) => !s.accent),
          span,
          look.palette.secondArea,
          kinds.length + (strokes.some((s) => s.accent) ? 2 : 0),
        ),
      ],
    },
    options: {
      ...still,
      scales: {
        x: timeScale(look, ...span),
        y: {
          ...loudness,
          type: 'linear',
          grace: '8%',
          ticks: { ...loudness.ticks, maxTicksLimit: 8, callback: (v) => `${v}`.replace('-', '\u2212') },
        },
      },
      plugins: withoutHelpers(
        plugins<'scatter'>(look, levelsQuestion, (item) => {
          const { stroke } = item.raw as Partial<StrokePoint>;
          return stroke === undefined ? (item.dataset.label ?? '') : strokeWords(result, stroke);
        }),
      ),
    },
  };
}

/** Two level lines, the upper filled down to the lower; the lower has no entry in the legend. */
function band(
  label: string,
  strokes: readonly GradedStroke[],
  [from, to]: [number, number],
  colour: string,
  index: number,
) {
  const spread = spreadOf(strokes.map((stroke) => stroke.levelDb));
  if (spread === null) return [];
  const line = (y: number, name: string, fill: false | { target: number }) => ({
    label: name,
    data: [
      { x: from, y },
      { x: to, y },
    ],
    showLine: true,
    order: 3,
    pointRadius: 0,
    pointHoverRadius: 0,
    pointHitRadius: 0,
    pointStyle: 'rect' as const,
    borderWidth: 0,
    borderColor: colour,
    backgroundColor: colour,
    fill,
  });
  return [line(spread.upperQuarter, label, { target: index + 1 }), line(spread.lowerQuarter, '', false)];
}

/** Leaves datasets without a name out of the legend. */
function withoutHelpers<T extends { legend: { labels: object } }>(parts: T) {
  const filter = (item: { text: string }) => item.text !== '';
  return { ...parts, legend: { ...parts.legend, labels: { ...parts.legend.labels, filter } } };
}
