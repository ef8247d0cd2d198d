import type { ChartConfiguration } from 'chart.js';
import type { TakeResult } from '../core/result/take-result.ts';
import {
  levelsText,
  scoreOverviewText,
  tempoCurveText,
  timingBySlotText,
  timingHistogramText,
} from './alt-text.ts';
import { type ChartTable, levelsTable, scoreTable, tempoTable, timingTable } from './chart-table.ts';
import { levels, levelsQuestion } from './levels.ts';
import type { Look } from './look.ts';
import { scoreOverview, scoreOverviewQuestion } from './score-overview.ts';
import { tempoCurve, tempoCurveQuestion } from './tempo-curve.ts';
import { timingBySlot, timingBySlotQuestion } from './timing-by-slot.ts';
import { timingHistogram, timingHistogramQuestion } from './timing-histogram.ts';

/** One picture of a take: the question it answers, its drawing, and the same in words and figures. */
export interface ChartEntry {
  readonly id: string;
  readonly question: string;
  /** Null where the take holds nothing to draw; text and table are asked only where there is a drawing. */
  readonly draw: (result: TakeResult, look: Look) => ChartConfiguration | null;
  readonly text: (result: TakeResult) => string;
  readonly table: (result: TakeResult) => ChartTable;
}

/** Every picture of a take, in the order of the report. */
export const chartList: readonly ChartEntry[] = [
  {
    id: 'score-overview',
    question: scoreOverviewQuestion,
    draw: (result, look) => scoreOverview(result, look) as ChartConfiguration | null,
    text: scoreOverviewText,
    table: scoreTable,
  },
  {
    id: 'timing-by-slot',
    question: timingBySlotQuestion,
    draw: (result, look) => timingBySlot(result, look) as ChartConfiguration | null,
    text: timingBySlotText,
    table: (result) => timingTable(result, { byHand: false }),
  },
  {
    id: 'levels',
    question: levelsQuestion,
    draw: (result, look) => levels(result, look) as ChartConfiguration | null,
    text: levelsText,
    table: levelsTable,
  },
  {
    id: 'timing-histogram',
    question: timingHistogramQuestion,
    draw: (result, look) => timingHistogram(result, look) as ChartConfiguration | null,
    text: timingHistogramText,
    table: (result) => timingTable(result, { byHand: true }),
  },
  {
    id: 'tempo-curve',
    question: tempoCurveQuestion,
    draw: (result, look) => tempoCurve(result, look) as ChartConfiguration | null,
    text: tempoCurveText,
    table: tempoTable,
  },
];
