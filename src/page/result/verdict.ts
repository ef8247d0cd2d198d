import { firstBreakWords } from '../../core/result/breaking-words.ts';
import { sentence } from '../../core/result/sentences.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { shownScore } from '../../core/scoring/score-curve.ts';
import { isTempoAdvice } from '../../core/scoring/tempo-advice.ts';

const words = { secure: 'secure', nearly: 'nearly there', 'not-yet': 'not there yet' } as const;

/**
 * A take's verdict in one line: its score with the range it likely lies in, or why it has none. Of an exercise whose
 * tempo rises until it breaks no score is told, but what breaks first.
 *
 * @example verdict(result) // 'Score 78, nearly there; likely 71 to 84.'
 */
export function verdict({ grading, scores, breaking = [] }: TakeResult): string {
  if (grading.state === 'not-gradable') return sentence(grading.reason);
  const [only] = breaking;
  if (only !== undefined && breaking.length === 1) return firstBreakWords(only);
  if (scores === null) return 'No score: too little of this take could be measured.';
  const { score, low, high, word } = scores.overall;
  return `Score ${shownScore(score)}, ${words[word]}; likely ${Math.round(low)} to ${Math.round(high)}.`;
}

/** What a take says of the tempo to play next, or null. */
export function tempoAdviceOf({ advice }: TakeResult): string | null {
  const found = advice.find(({ code }) => isTempoAdvice(code));
  return found === undefined ? null : sentence(found);
}
