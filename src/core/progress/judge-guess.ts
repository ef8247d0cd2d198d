import type { TakeResult } from '../result/take-result.ts';
import type { JudgedGuess } from './guess-record.ts';
import { type GuessAnswers, guessedLines, guessTruth } from './guess-truth.ts';

/** Answers that a question has: faster, slower or neither; more or fewer. */
const tempos = 3;
const tapAnswers = 2;

/**
 * A guess held against its take: the answers that were given where the take tells the truth.
 *
 * @example judgeGuess({ worstLine: 1, tempo: null }, result) // [{ question: 'worst-line', guessed: '1', truth: '0', choices: 3 }]
 */
export function judgeGuess(guess: GuessAnswers, result: TakeResult): JudgedGuess[] {
  const truth = guessTruth(result);
  const told = (
    question: JudgedGuess['question'],
    guessed: string | number | null | undefined,
    right: string | number | null,
    choices: number,
  ): JudgedGuess[] =>
    guessed === null || guessed === undefined || right === null
      ? []
      : [{ question, guessed: `${guessed}`, truth: `${right}`, choices }];
  return [
    ...told('worst-line', guess.worstLine, truth.worstLine, guessedLines(result).length),
    ...told('tempo', guess.tempo, truth.tempo, tempos),
    ...told('taps', guess.taps, truth.taps, tapAnswers),
  ];
}
