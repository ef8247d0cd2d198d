import { wilsonInterval } from '../stats/wilson-interval.ts';

export type GuessQuestion = 'worst-line' | 'tempo' | 'taps';

/** One answer that a take could be held against. */
export interface JudgedGuess {
  readonly question: GuessQuestion;
  readonly guessed: string;
  readonly truth: string;
  /** Answers there were to choose from. */
  readonly choices: number;
}

/** How often guesses at one question were right. Shares lie between 0 and 1. */
export interface GuessRecord {
  readonly question: GuessQuestion;
  readonly guesses: number;
  readonly right: number;
  /** 95 % interval of the share that is right. */
  readonly low: number;
  readonly high: number;
  /** Share that would be right by chance. */
  readonly chance: number;
  /** Where the interval lies against chance; `not-told` also where there are too few guesses. */
  readonly verdict: 'better' | 'worse' | 'not-told';
}

/** Guesses below which nothing is held against chance. Our judgement: kept in simulations. */
export const fewestGuesses = 10;

const questions: readonly GuessQuestion[] = ['worst-line', 'tempo', 'taps'];
const quantile = 1.96;

/**
 * How well players guess their takes, question by question: Wilson's interval (1927) of the share that is right,
 * against the share that would be right by chance. At lines chance is one of as many as there are; else it is what
 * somebody would hit who gave the same answers as often without having listened: Σ share of guesses · share of truths
 * (Cohen 1960), so that always saying "it held" proves nothing.
 *
 * @example guessRecords(judged)[0] // { question: 'worst-line', guesses: 12, right: 7, low: 0.32, high: 0.81, chance: 0.33, … }
 */
export function guessRecords(judged: readonly JudgedGuess[]): GuessRecord[] {
  return questions.flatMap((question) => {
    const own = judged.filter((one) => one.question === question);
    if (own.length === 0) return [];
    const right = own.filter(({ guessed, truth }) => guessed === truth).length;
    const chance = question === 'worst-line' ? amongLines(own) : byFrequency(own);
    const { low, high } = wilsonInterval(right / own.length, own.length, quantile);
    const enough = own.length >= fewestGuesses;
    const verdict = enough && low > chance ? 'better' : enough && high < chance ? 'worse' : 'not-told';
    return { question, guesses: own.length, right, low, high, chance, verdict };
  });
}

const amongLines = (judged: readonly JudgedGuess[]) =>
  judged.reduce((sum, { choices }) => sum + 1 / choices, 0) / judged.length;

function byFrequency(judged: readonly JudgedGuess[]): number {
  const share = (of: 'guessed' | 'truth', answer: string) =>
    judged.filter((one) => one[of] === answer).length / judged.length;
  const answers = [...new Set(judged.map(({ guessed }) => guessed))];
  return answers.reduce((sum, answer) => sum + share('guessed', answer) * share('truth', answer), 0);
}
