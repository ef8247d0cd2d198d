import type { TakeResult } from '../core/result/take-result.ts';
import type { ChartEntry } from './chart-entry.ts';
import { deviationScale } from './deviation-scale.ts';
import { gradedStrokes } from './graded-strokes.ts';
import { type FigureLane, laneChart, laneTable, middleOf } from './lane-chart.ts';
import { lanes } from './lanes.ts';
import { listWords } from './list-words.ts';
import { deviationWords } from './stroke-words.ts';
import { whichStrokes } from './thin-out.ts';

function figureLanes(result: TakeResult): FigureLane[] {
  return lanes(gradedStrokes(result), { byHand: false }).map(({ label, strokes }) => ({
    label,
    items: strokes.map((stroke) => ({ stroke, value: stroke.deviationMs })),
  }));
}

/** Deviation from the even place, ms, one lane a partial. Nothing where no deviation was measured. */
export const timingBySlot: ChartEntry = {
  id: 'timing-by-slot',
  question: 'Which partial of the beat comes early or late?',
  needs: 'strokes whose timing could be measured',
  printed: true,
  draw: (result, look) =>
    laneChart(result, look, figureLanes(result), {
      question: timingBySlot.question,
      across: 'partial; each lane runs from start to end',
      up: deviationScale(look),
    }) as ReturnType<ChartEntry['draw']>,
  text: (result) => {
    const found = figureLanes(result);
    const places = found.map((lane) => `partial ${lane.label} lands ${deviationWords(middleOf(lane))}`);
    const count = found.reduce((sum, lane) => sum + lane.items.length, 0);
    return `${whichStrokes(count)}, by how early or late each came. In the middle, ${listWords(places)}.`;
  },
  table: (result) => laneTable(figureLanes(result), ['Partial', 'Earliest', 'Latest'], deviationWords),
};
