import type { ChartConfiguration } from 'chart.js';
import type { TakeResult } from '../core/result/take-result.ts';
import { deviationScale } from './deviation-scale.ts';
import { plugins, type StrokePoint, scale, still } from './frame.ts';
import { gradedStrokes } from './graded-strokes.ts';
import { type Lane, lanes } from './lanes.ts';
import type { Look } from './look.ts';
import { markStyle, marks } from './marks.ts';
import { spreadOf } from './spread-of.ts';
import { strokeWords } from './stroke-words.ts';
import { shownOf, thinOut } from './thin-out.ts';

export const timingBySlotQuestion = 'Which partial of the beat comes early or late?';

/** Share of a lane's width that the take fills, from its first stroke at the left to its last at the right. */
const laneFill = 0.8;

/**
 * Deviation from the even place, ms, one lane a partial; inside a lane the take runs from left to right, a bar
 * marks the middle stroke. Null where no deviation was measured.
 */
export function timingBySlot(result: TakeResult, look: Look): ChartConfiguration<'scatter'> | null {
  const found = lanes(gradedStrokes(result), { byHand: false });
  if (found.length === 0) return null;
  const points = placed(found);
  const count = found.reduce((sum, lane) => sum + lane.strokes.length, 0);
  const shown = shownOf(count);
  const kinds = marks.flatMap((mark) => {
    const data = points
      .map((lane) => lane.filter((p) => p.accent === mark.accent && p.hand === mark.hand))
      .flatMap((lane) => thinOut(lane, Math.ceil((lane.length * shown) / count)));
    return data.length === 0
      ? []
      : [{ label: mark.label, data: [...data], order: 2, ...markStyle(mark, look.palette, shown) }];
  });
  const plain = scale(look, 'partial; each lane runs from start to end');
  return {
    type: 'scatter',
    data: { datasets: [...kinds, middles(found, look)] },
    options: {
      ...still,
      scales: {
        x: {
          ...plain,
          type: 'linear',
          min: 0.5,
          max: found.length + 0.5,
          ticks: {
            ...plain.ticks,
            stepSize: 1,
            autoSkip: false,
            callback: (v) => found[Number(v) - 1]?.label ?? '',
          },
          afterBuildTicks: (axis) => {
            axis.ticks = found.map((_, i) => ({ value: i + 1 }));
          },
          grid: { ...plain.grid, offset: true },
        },
        y: deviationScale(look),
      },
      plugins: plugins<'scatter'>(look, timingBySlotQuestion, (item) => {
        const { stroke } = item.raw as Partial<StrokePoint>;
        return stroke === undefined ? (item.dataset.label ?? '') : strokeWords(result, stroke);
      }),
    },
  };
}

function placed(found: readonly Lane[]) {
  const times = found.flatMap((lane) => [lane.strokes[0]!.time, lane.strokes.at(-1)!.time]);
  const start = Math.min(...times);
  const length = Math.max(...times) - start || 1;
  return found.map((lane, i) =>
    lane.strokes.map(({ time, deviationMs, stroke, accent, hand }) => ({
      x: i + 1 + laneFill * ((time - start) / length - 0.5),
      y: deviationMs,
      stroke,
      accent,
      hand,
    })),
  );
}

/** A short level line over each lane at its median, with a gap before the next. */
function middles(found: readonly Lane[], look: Look) {
  const data = found.flatMap((lane, i) => {
    const y = spreadOf(lane.strokes.map((stroke) => stroke.deviationMs))!.middle;
    const half = laneFill / 2 + 0.04;
    return [
      { x: i + 1 - half, y },
      { x: i + 1 + half, y },
      { x: i + 1 + half, y: Number.NaN },
    ];
  });
  return {
    label: 'middle of the lane',
    data,
    order: 1,
    showLine: true,
    pointStyle: 'line' as const,
    pointRadius: 0,
    pointHoverRadius: 0,
    borderColor: look.palette.ink,
    backgroundColor: look.palette.ink,
    borderWidth: 3,
  };
}
