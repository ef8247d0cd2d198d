import type { ScoreWord } from '../core/result/take-result.ts';

const words: Record<ScoreWord, string> = { secure: 'secure', nearly: 'nearly', 'not-yet': 'not yet' };

/** A score's word as people read it. */
export function scoreWord(word: ScoreWord): string {
  return words[word];
}
