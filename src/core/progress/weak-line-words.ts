import { rounded } from '../result/figures.ts';
import { shownScore } from '../scoring/score-curve.ts';
import type { LineFigure } from './line-mark.ts';
import type { WeakLine } from './weakest-lines.ts';

interface Words {
  readonly said: (figure: LineFigure) => string;
  readonly unit: string;
}

const words: Readonly<Record<string, Words>> = {
  'timing-spread-share': { said: () => 'uneven in time', unit: '% of a partial' },
  'accent-to-tap-ratio': {
    said: ({ value }) =>
      value < 8
        ? 'accents stand out too little'
        : value > 20
          ? 'accents stand out very far'
          : 'accents against taps',
    unit: 'dB over the taps',
  },
  'tap-spread': { said: () => 'taps differ in loudness', unit: 'dB' },
  'hand-offset-share': {
    said: ({ low, high }) =>
      low > 0 ? 'the left hand comes late' : high < 0 ? 'the right hand comes late' : 'left hand after right',
    unit: '% of a partial',
  },
};

/**
 * What makes a line weak, in plain words with its figure.
 *
 * @example weakWords(line) // 'uneven in time: 6.1 % of a partial (5.0 to 7.6)'
 */
export function weakWords({ measure, figures }: WeakLine): string {
  const figure = figures[measure]!;
  const { said, unit } = words[measure]!;
  const { value, low, high } = figure;
  return `${said(figure)}: ${rounded(value)} ${unit} (${rounded(low)} to ${rounded(high)})`;
}

/**
 * How a weak line stands to the others, in a sentence.
 *
 * @example standingWords(line) // 'Likely worth 66 points in that (58 to 74), the other lines 84: clearly weaker than the others.'
 */
export function standingWords({ likely, others, apart }: WeakLine): string {
  if (others === null) return 'Nothing else was played to hold it against.';
  const { value, low, high } = likely;
  const points = `Likely worth ${shownScore(value)} points in that (${Math.round(low)} to ${Math.round(high)}), the other lines ${shownScore(others)}`;
  return apart
    ? `${points}: clearly weaker than the others.`
    : `${points}. Not clearly apart from the others: listen before you decide.`;
}
