import { scoreWords } from '../core/result/names.ts';
import type { TakeResult } from '../core/result/take-result.ts';
import { shownScore } from '../core/scoring/score-curve.ts';
import type { ChartTable } from './chart-entry.ts';
import { clockTime } from './clock-time.ts';
import { gradedStrokes } from './graded-strokes.ts';
import { lanes } from './lanes.ts';
import { marks } from './marks.ts';
import { namedScores } from './score-overview.ts';
import { spreadOf } from './spread-of.ts';
import { decibels, deviationWords } from './stroke-words.ts';

/** Strokes, middle, middle half and extremes of the timing of each partial and hand. */
export function timingTable(result: TakeResult): ChartTable {
  const head = ['Partial and hand', 'Strokes', 'Middle', 'Middle half', 'Earliest', 'Latest'];
  const rows = lanes(gradedStrokes(result), { byHand: true }).map(({ label, strokes }) => {
    const spread = spreadOf(strokes.map((stroke) => stroke.deviationMs))!;
    const half = `${deviationWords(spread.lowerQuarter)} to ${deviationWords(spread.upperQuarter)}`;
    const ends = [deviationWords(spread.lowest), deviationWords(spread.highest)];
    return [label, `${spread.count}`, deviationWords(spread.middle), half, ...ends];
  });
  return { head, rows };
}

/** Strokes, middle, middle half and extremes of the level of each kind of stroke. */
export function levelsTable(result: TakeResult): ChartTable {
  const strokes = gradedStrokes(result);
  const rows = marks.flatMap((mark) => {
    const members = strokes.filter((stroke) => stroke.accent === mark.accent && stroke.hand === mark.hand);
    const spread = spreadOf(members.map((stroke) => stroke.levelDb));
    if (spread === null) return [];
    const half = `${decibels(spread.lowerQuarter)} to ${decibels(spread.upperQuarter)}`;
    const ends = [decibels(spread.lowest), decibels(spread.highest)];
    return [[mark.label, `${spread.count}`, decibels(spread.middle), half, ...ends]];
  });
  return { head: ['Kind', 'Strokes', 'Middle', 'Middle half', 'Softest', 'Loudest'], rows };
}

/** Tempo at the start, in the middle and at the end of every graded run. */
export function tempoTable({ tempo }: TakeResult): ChartTable {
  const runs = [...new Set(tempo.segment)].map((run) =>
    tempo.time.flatMap((time, i) => (tempo.segment[i] === run ? [{ time, bpm: tempo.bpm[i]! }] : [])),
  );
  const rows = runs.map((points) => {
    const [first, last] = [points[0]!, points.at(-1)!];
    const spread = spreadOf(points.map((point) => point.bpm))!;
    const figures = [first.bpm, spread.lowest, spread.middle, spread.highest, last.bpm];
    return [`${clockTime(first.time)} to ${clockTime(last.time)}`, ...figures.map((bpm) => bpm.toFixed(1))];
  });
  return { head: ['Run', 'At its start', 'Slowest', 'Middle', 'Fastest', 'At its end'], rows };
}

/** Every score with its interval and word. */
export function scoreTable(result: TakeResult): ChartTable {
  const rows = namedScores(result).map(({ name, score }) => [
    name,
    `${shownScore(score.score)}`,
    `${Math.round(score.low)} to ${Math.round(score.high)}`,
    scoreWords[score.word],
  ]);
  return { head: ['What', 'Score', 'Likely between', 'Word'], rows };
}
