import type { ChartConfiguration } from 'chart.js';
import type { TakeResult } from '../core/result/take-result.ts';
import { plugins, still, timeScale, withoutHelpers } from './frame.ts';
import { type GradedStroke, gradedStrokes } from './graded-strokes.ts';
import { levelScale } from './level-scale.ts';
import type { Look } from './look.ts';
import { marks } from './marks.ts';
import { spreadOf } from './spread-of.ts';
import { strokeOrLabel, strokeSets } from './stroke-sets.ts';
import { tapCeilingPoints } from './tap-ceiling.ts';

export const levelsQuestion = 'Do the accents stand clear of the taps?';

/**
 * Level of every stroke over the take, dB; behind accents and behind taps the band that holds their middle half.
 * Null where nothing was graded.
 */
export function levels(result: TakeResult, look: Look): ChartConfiguration<'scatter'> | null {
  const strokes = gradedStrokes(result);
  if (strokes.length === 0) return null;
  const points = marks.map((mark) =>
    strokes
      .filter((stroke) => stroke.accent === mark.accent && stroke.hand === mark.hand)
      .map(({ time, levelDb, stroke, accent, hand }) => ({ x: time, y: levelDb, stroke, accent, hand })),
  );
  const kinds = strokeSets(points, look);
  const span: [number, number] = [strokes[0]!.time, strokes.at(-1)!.time];
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
        ...ceiling(result, look),
      ],
    },
    options: {
      ...still,
      scales: {
        x: timeScale(look, ...span),
        y: levelScale(look),
      },
      plugins: withoutHelpers(plugins<'scatter'>(look, levelsQuestion, strokeOrLabel(result))),
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

/** A dashed line that no tap shall cross, with a step where a line of the sheet asks for another ratio. */
function ceiling(result: TakeResult, look: Look) {
  const data = tapCeilingPoints(result);
  if (data.length === 0) return [];
  return [
    {
      label: 'tap ceiling',
      data,
      showLine: true,
      order: 1,
      pointRadius: 0,
      pointHoverRadius: 0,
      pointHitRadius: 6,
      pointStyle: 'line' as const,
      borderColor: look.palette.ink,
      backgroundColor: look.palette.ink,
      borderWidth: 1.5,
      borderDash: [6, 4],
    },
  ];
}
