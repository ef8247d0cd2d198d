import type { TakeResult } from '../result/take-result.ts';
import { measuredOutcome } from '../scoring/find-measure.ts';
import { lineCourses } from '../session/line-course.ts';

export type TempoGuess = 'rushed' | 'dragged' | 'held';
export type TapsGuess = 'low' | 'too-loud';

/** What a player thought of a take before its figures were shown; null where no answer was given. */
export interface GuessAnswers {
  /** Line of the sheet that was thought the weakest. */
  readonly worstLine: number | null;
  readonly tempo: TempoGuess | null;
  /** Left out by older programs. */
  readonly taps?: TapsGuess | null;
}

/** What a take says to a guess; null where it can't tell. */
interface GuessTruth {
  /** The line whose repeats score lowest on average, if it lies clearly under the next one. */
  readonly worstLine: number | null;
  /** Where the tempo went from start to end, if its whole range says so. */
  readonly tempo: TempoGuess | null;
  /** Whether taps stayed away from the accents, if the whole range says so. */
  readonly taps: TapsGuess | null;
}

/** Points between the weakest line and the next below which neither is the weakest. Our judgement. */
const clearlyUnder = 2;

/**
 * % of change from which it is rushing or dragging, and which a tempo that held surely doesn't reach. Our judgement.
 */
const tempo = { heldWithin: 1, surelyWithin: 3 } as const;

/** % of taps too near the accents: more isn't low any more; low surely has fewer than the second. Our judgement. */
const taps = { lowWithin: 2, surelyWithin: 10 } as const;

/** The truth about what a player is asked to guess. */
export function guessTruth(result: TakeResult): GuessTruth {
  return { worstLine: worstLine(result), tempo: tempoTruth(result), taps: tapsTruth(result) };
}

/** The lines that a guess chooses from: those with a score. */
export function guessedLines(
  result: TakeResult,
): readonly { readonly line: number; readonly score: number }[] {
  return lineCourses(result).flatMap(({ line, repeats }) => {
    const scores = repeats.flatMap(({ score }) => (score === null ? [] : [score]));
    return scores.length === 0
      ? []
      : [{ line, score: scores.reduce((sum, one) => sum + one, 0) / scores.length }];
  });
}

function worstLine(result: TakeResult): number | null {
  const [worst, next] = guessedLines(result).toSorted((a, b) => a.score - b.score);
  if (worst === undefined || next === undefined || next.score - worst.score < clearlyUnder) return null;
  return worst.line;
}

function tempoTruth({ measures }: TakeResult): TempoGuess | null {
  const outcome = measuredOutcome(measures, 'tempo-change');
  if (outcome === undefined) return null;
  const { value, low, high } = outcome;
  if (low > 0 && value > tempo.heldWithin) return 'rushed';
  if (high < 0 && value < -tempo.heldWithin) return 'dragged';
  return low > -tempo.surelyWithin && high < tempo.surelyWithin ? 'held' : null;
}

function tapsTruth({ measures }: TakeResult): TapsGuess | null {
  const outcome = measuredOutcome(measures, 'tap-ceiling');
  if (outcome === undefined) return null;
  const { value, low, high } = outcome;
  if (low > taps.lowWithin) return 'too-loud';
  return value <= taps.lowWithin && high < taps.surelyWithin ? 'low' : null;
}
