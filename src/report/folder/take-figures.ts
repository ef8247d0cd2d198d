import { sentence } from '../../core/result/sentences.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { isTempoAdvice } from '../../core/scoring/tempo-advice.ts';
import type { TakeFigures } from './folder-result.ts';

/** Lines of a sheet without a title that are named. */
const mostLabels = 2;

/**
 * What a listing of many takes shows of one: its exercise, its scores, what to look at.
 *
 * @example takeFigures(result).overall // { score: 74.2, low: 66, high: 81, word: 'nearly' }
 */
export function takeFigures(result: TakeResult): TakeFigures {
  const { sheet, recording, strokes, slots, scores, grading, advice, warnings } = result;
  const said = [...advice.filter(({ code }) => !isTempoAdvice(code)), ...warnings];
  return {
    exercise: exerciseName(sheet),
    duration: recording.duration,
    strokes: strokes.time.length,
    missed: slots.state.filter((state) => state === 'missed').length,
    overall: scores === null ? null : scores.overall,
    dimensions: scores === null ? [] : scores.dimensions.map(({ id, score }) => ({ id, score })),
    noGrade: grading.state === 'graded' ? null : grading.reason,
    attention: said.map((item) => ({ code: item.code, sentence: sentence(item) })),
  };
}

function exerciseName({ title, lines }: TakeResult['sheet']): string {
  if (title.trim() !== '') return title;
  const labels = lines.slice(0, mostLabels).map(({ label }) => label);
  const more = lines.length - labels.length;
  return more > 0 ? `${labels.join(', ')} and ${more} more` : labels.join(', ');
}
