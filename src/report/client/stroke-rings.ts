import type { ActiveElement, Chart, ChartEvent, Plugin } from 'chart.js';
import type { ChosenStroke } from './chosen-stroke.ts';

/** Radius of the ring round the chosen stroke, CSS pixels. */
const ringRadius = 10;

/** The strokes that a picture holds, as in its points. */
export function strokesOf(chart: Chart): number[] {
  return chart.data.datasets.flatMap((dataset) =>
    dataset.data.flatMap((point) => {
      const stroke = strokeAt(point);
      return stroke === null ? [] : [stroke];
    }),
  );
}

/** Draws a double ring in the ink of the page round every point of the chosen stroke. */
export function strokeRings(chosen: ChosenStroke, colours: { ink: string; paper: string }): Plugin {
  return {
    id: 'stroke-rings',
    afterDatasetsDraw: (chart) => {
      const stroke = chosen.get();
      if (stroke === null) return;
      chart.data.datasets.forEach((dataset, d) => {
        dataset.data.forEach((point, i) => {
          if (strokeAt(point) !== stroke) return;
          const { x, y } = chart.getDatasetMeta(d).data[i]!.getProps(['x', 'y'], true);
          ring(chart.ctx, x as number, y as number, colours);
        });
      });
    },
  };
}

/** Chooses the stroke under the pointer or finger. */
export function chooseOnPoint(chosen: ChosenStroke) {
  return (_: ChartEvent, elements: readonly ActiveElement[], chart: Chart): void => {
    for (const { datasetIndex, index } of elements) {
      const stroke = strokeAt(chart.data.datasets[datasetIndex]!.data[index]);
      if (stroke === null) continue;
      chosen.choose(stroke);
      return;
    }
  };
}

function ring(
  context: CanvasRenderingContext2D,
  x: number,
  y: number,
  { ink, paper }: { ink: string; paper: string },
) {
  context.save();
  for (const [colour, width] of [
    [paper, 6],
    [ink, 2.5],
  ] as const) {
    context.beginPath();
    context.arc(x, y, ringRadius, 0, 2 * Math.PI);
    context.strokeStyle = colour;
    context.lineWidth = width;
    context.stroke();
  }
  context.restore();
}

function strokeAt(point: unknown): number | null {
  const stroke = (point as { stroke?: unknown } | null)?.stroke;
  return typeof stroke === 'number' ? stroke : null;
}
