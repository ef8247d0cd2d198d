import { scoreWords } from '../core/result/names.ts';
import type { Score } from '../core/result/take-result.ts';
import { shownScore, wordOfScore } from '../core/scoring/score-curve.ts';

/**
 * A score with its word, in pages that list takes.
 *
 * @example scoreMark(90) // '<span class="mark secure">90 <span>secure</span></span>'
 */
export function scoreMark(score: number): string {
  const word = wordOfScore(score);
  return `<span class="mark ${word}">${shownScore(score)} <span>${scoreWords[word]}</span></span>`;
}

/** A take's score with its word and where it likely lies. */
export const likelyScore = ({ score, low, high }: Score): string =>
  `${scoreMark(score)} <span class="reason">likely ${Math.round(low)} to ${Math.round(high)}</span>`;
