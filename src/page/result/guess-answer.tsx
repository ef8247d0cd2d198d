import type { TakeResult } from '../../core/result/take-result.ts';
import { type OwnGuess, tempoWords } from './guess-form.tsx';
import { guessTruth } from './guess-truth.ts';

/** The guess beside the truth, as far as the take can tell it. */
export function GuessAnswer({ result, guess }: { readonly result: TakeResult; readonly guess: OwnGuess }) {
  const truth = guessTruth(result);
  const line = (i: number | null) => (i === null ? 'you couldn’t tell' : `line ${i + 1}`);
  return (
    <ul class="guess-answer">
      {result.sheet.lines.length > 1 && (
        <li>
          Weakest line: you said {line(guess.worstLine)};{' '}
          {truth.worstLine === null ? 'the take doesn’t tell.' : `it was line ${truth.worstLine + 1}.`}
        </li>
      )}
      <li>
        Tempo: you said {guess.tempo === null ? 'you couldn’t tell' : tempoWords[guess.tempo]};{' '}
        {truth.tempo === null ? 'the take doesn’t tell.' : `${tempoWords[truth.tempo]}.`}
      </li>
    </ul>
  );
}
