import { type GuessAnswers, guessTruth } from '../../core/progress/guess-truth.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { tapsWords, tempoWords } from './guess-form.tsx';

/** The guess beside the truth, as far as the take can tell it. */
export function GuessAnswer({
  result,
  guess,
}: {
  readonly result: TakeResult;
  readonly guess: GuessAnswers;
}) {
  const truth = guessTruth(result);
  const line = (i: number | null) => (i === null ? "you couldn't tell" : `line ${i + 1}`);
  const said = <Answer extends string>(answer: Answer | null, words: Readonly<Record<Answer, string>>) =>
    answer === null ? "you couldn't tell" : words[answer];
  const heard = <Answer extends string>(answer: Answer | null, words: Readonly<Record<Answer, string>>) =>
    answer === null ? "the take doesn't tell." : `${words[answer]}.`;
  const { taps } = guess;
  return (
    <ul class="guess-answer">
      {result.sheet.lines.length > 1 && (
        <li>
          Weakest line: you said {line(guess.worstLine)};{' '}
          {truth.worstLine === null
            ? 'the lines are too near each other to tell.'
            : `it was line ${truth.worstLine + 1}.`}
        </li>
      )}
      <li>
        Tempo: you said {said(guess.tempo, tempoWords)}; {heard(truth.tempo, tempoWords)}
      </li>
      {taps !== undefined && (taps !== null || truth.taps !== null) && (
        <li>
          Taps: you said {said(taps, tapsWords)}; {heard(truth.taps, tapsWords)}
        </li>
      )}
    </ul>
  );
}
