import { counted, rounded } from '../result/figures.ts';
import { fewestGuesses, type GuessQuestion, type GuessRecord } from './guess-record.ts';

const names: Readonly<Record<GuessQuestion, string>> = {
  'worst-line': 'Weakest line',
  tempo: 'Tempo',
  taps: 'Low taps',
};

const verdicts: Readonly<Record<GuessRecord['verdict'], string>> = {
  better: 'Your ear tells more than chance.',
  worse: 'Your ear is led astray: chance would be right more often.',
  'not-told': "That can't be told from chance yet.",
};

const percent = (share: number) => `${rounded(100 * share, 0)} %`;

/**
 * A record in one line.
 *
 * @example guessWords(record) // 'Weakest line: right in 7 of 12 guesses (likely 32 % to 81 %; by chance 33 %). …'
 */
export function guessWords({ question, guesses, right, low, high, chance, verdict }: GuessRecord): string {
  const found = `${names[question]}: right in ${right} of ${counted(guesses, 'guess', 'guesses')}`;
  const range = `likely ${percent(low)} to ${percent(high)}`;
  const left = fewestGuesses - guesses;
  return left > 0
    ? `${found} (${range}). ${left} more ${left === 1 ? 'is' : 'are'} needed to hold that against chance.`
    : `${found} (${range}; by chance ${percent(chance)}). ${verdicts[verdict]}`;
}
