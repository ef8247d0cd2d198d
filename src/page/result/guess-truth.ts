import type { TakeResult } from '../../core/result/take-result.ts';
import { lineCourses } from '../../report/line-course.ts';

export type TempoGuess = 'rushed' | 'dragged' | 'held';

/** What a take says to a guess; null where it can't tell. */
export interface GuessTruth {
  /** The line whose repeats score lowest on average. */
  readonly worstLine: number | null;
  /** Where the tempo went from start to end, if the whole of its range lies on one side of none. */
  readonly tempo: TempoGuess | null;
}

/** % of change that nobody hears as rushing. Our judgement. */
const heldWithin = 1;

/** The truth about what a player is asked to guess. */
export function guessTruth(result: TakeResult): GuessTruth {
  const scored = lineCourses(result).flatMap(({ line, repeats }) => {
    const scores = repeats.flatMap(({ score }) => (score === null ? [] : [score]));
    return scores.length === 0
      ? []
      : [{ line, score: scores.reduce((sum, one) => sum + one, 0) / scores.length }];
  });
  const worst = scored.length < 2 ? null : scored.reduce((a, b) => (b.score < a.score ? b : a));
  return { worstLine: worst?.line ?? null, tempo: tempoTruth(result) };
}

function tempoTruth({ measures }: TakeResult): TempoGuess | null {
  const outcome = measures.find(
    ({ id, scope }) => id === 'tempo-change' && Object.keys(scope).length === 0,
  )?.outcome;
  if (outcome?.state !== 'measured') return null;
  const { value, low, high } = outcome;
  if (low > 0 && value > heldWithin) return 'rushed';
  if (high < 0 && value < -heldWithin) return 'dragged';
  return 'held';
}
