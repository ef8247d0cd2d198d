import { segmentList } from '../../../src/core/grading/segment-list.ts';
import { slotColumns } from '../../../src/core/grading/slot-columns.ts';
import { strokeColumns } from '../../../src/core/grading/stroke-columns.ts';
import { tempoColumns } from '../../../src/core/grading/tempo-columns.ts';
import type { TakeResult } from '../../../src/core/result/take-result.ts';
import { exampleResult } from '../../support/example-result.ts';
import { simulatedPerformance, type Take } from '../measures/simulated-performance.ts';
import { padStroke } from './made-take.ts';

/** The result of a simulated take without grace notes, as far as a model is made of it. */
export function simulatedResult(take: Take): TakeResult {
  const performance = simulatedPerformance(take);
  const { sheet, slots, alignment } = performance;
  const strokes = performance.strokes.map(({ time, timeSe, levelDb, levelSe }) => ({
    ...padStroke(time),
    timeSe,
    levelDb,
    levelSe,
  }));
  return exampleResult({
    sheet: { title: sheet.title, lines: sheet.lines.map(({ beats: _, ...line }) => line) },
    strokes: strokeColumns(strokes, performance),
    slots: slotColumns(slots, alignment),
    segments: segmentList(alignment, strokes),
    tempo: tempoColumns(performance),
  });
}
