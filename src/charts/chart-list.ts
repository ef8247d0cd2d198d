import { accentBend } from './accent-bend.ts';
import { levelsText, scoreOverviewText, tempoCurveText, timingHistogramText } from './alt-text.ts';
import { beatShape } from './beat-shape.ts';
import type { ChartEntry } from './chart-entry.ts';
import { levelsTable, scoreTable, tempoTable, timingTable } from './chart-table.ts';
import { endurance } from './endurance.ts';
import { everyStroke } from './every-stroke.ts';
import { handClouds } from './hand-clouds.ts';
import { levels, levelsQuestion } from './levels.ts';
import { ratioCourse } from './ratio-course.ts';
import { recordingOverview } from './recording-overview.ts';
import { scoreOverview, scoreOverviewQuestion } from './score-overview.ts';
import { tapNeighbours } from './tap-neighbours.ts';
import { tempoCurve, tempoCurveQuestion } from './tempo-curve.ts';
import { timingBySlot } from './timing-by-slot.ts';
import { timingHistogram, timingHistogramQuestion } from './timing-histogram.ts';
import { transitions } from './transitions.ts';
import { wanderCurve } from './wander-curve.ts';

/** Every picture of a take, in the order of the report. */
export const chartList: readonly ChartEntry[] = [
  {
    id: 'score-overview',
    question: scoreOverviewQuestion,
    needs: 'enough figures for scores',
    printed: true,
    draw: (result, look) => scoreOverview(result, look) as ReturnType<ChartEntry['draw']>,
    text: scoreOverviewText,
    table: scoreTable,
  },
  recordingOverview,
  everyStroke,
  timingBySlot,
  beatShape,
  {
    id: 'timing-histogram',
    question: timingHistogramQuestion,
    needs: 'strokes whose timing could be measured',
    draw: (result, look) => timingHistogram(result, look) as ReturnType<ChartEntry['draw']>,
    text: timingHistogramText,
    table: timingTable,
  },
  accentBend,
  transitions,
  {
    id: 'levels',
    question: levelsQuestion,
    needs: 'graded strokes',
    printed: true,
    draw: (result, look) => levels(result, look) as ReturnType<ChartEntry['draw']>,
    text: levelsText,
    table: levelsTable,
  },
  tapNeighbours,
  ratioCourse,
  handClouds,
  {
    id: 'tempo-curve',
    question: tempoCurveQuestion,
    needs: 'strokes whose local tempo could be measured',
    printed: true,
    draw: (result, look) => tempoCurve(result, look) as ReturnType<ChartEntry['draw']>,
    text: tempoCurveText,
    table: tempoTable,
  },
  wanderCurve,
  endurance,
];
