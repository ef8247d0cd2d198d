import type { TakeResult } from '../core/result/take-result.ts';
import { median } from '../core/stats/median.ts';
import type { TakeTable } from './library-schema.ts';

/** What a listing shows of a take's result without opening it. */
type TakeSummary = Pick<
  TakeTable,
  | 'duration'
  | 'bpmLow'
  | 'bpmHigh'
  | 'bpmPlayed'
  | 'graded'
  | 'rubric'
  | 'score'
  | 'scoreLow'
  | 'scoreHigh'
  | 'scoreWord'
  | 'dimensions'
  | 'timingSpreadMs'
  | 'timingSpreadShare'
  | 'ratioDb'
  | 'strokesRight'
  | 'strokesLeft'
  | 'strokesOther'
  | 'missed'
  | 'endGaveWay'
>;

/**
 * The columns of a take that follow from its result; figures of the whole take, null where they weren't measured.
 *
 * @example takeSummary(result).scoreWord // 'nearly'
 */
export function takeSummary(result: TakeResult): TakeSummary {
  const { scores, strokes, slots, sheet, tempo } = result;
  const asked = sheet.lines.map(({ bpm }) => bpm).filter((bpm) => bpm !== null);
  const ofHand = (hand: 'R' | 'L' | null) => strokes.hand.filter((one) => one === hand).length;
  return {
    duration: result.recording.duration,
    bpmLow: asked.length === 0 ? null : Math.min(...asked),
    bpmHigh: asked.length === 0 ? null : Math.max(...asked),
    bpmPlayed: tempo.bpm.length === 0 ? null : median(tempo.bpm),
    graded: result.grading.state === 'graded' ? 1 : 0,
    rubric: scores?.rubric ?? null,
    score: scores?.overall.score ?? null,
    scoreLow: scores?.overall.low ?? null,
    scoreHigh: scores?.overall.high ?? null,
    scoreWord: scores?.overall.word ?? null,
    dimensions: JSON.stringify(
      (scores?.dimensions ?? []).map(({ id, score }) => ({ id, score: score.score, word: score.word })),
    ),
    timingSpreadMs: wholeTake(result, 'timing-spread'),
    timingSpreadShare: wholeTake(result, 'timing-spread-share'),
    ratioDb: wholeTake(result, 'accent-to-tap-ratio'),
    strokesRight: ofHand('R'),
    strokesLeft: ofHand('L'),
    strokesOther: ofHand(null),
    missed: slots.state.filter((state) => state === 'missed').length,
    endGaveWay: endGaveWay(result) ? 1 : 0,
  };
}

/** Whether a result's advice says that the end of the take gave way against its start. */
export const endGaveWay = ({ advice }: Pick<TakeResult, 'advice'>): boolean =>
  advice.some(({ code }) => code === 'fades-at-the-end');

function wholeTake(result: TakeResult, id: string): number | null {
  const found = result.measures.find((one) => one.id === id && Object.keys(one.scope).length === 0);
  return found?.outcome.state === 'measured' ? found.outcome.value : null;
}
