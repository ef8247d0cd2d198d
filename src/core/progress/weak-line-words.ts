import { rounded } from '../result/figures.ts';
import { secureScore, shownScore } from '../scoring/score-curve.ts';
import type { LineFigure } from './line-mark.ts';
import type { WeakLine } from './weakest-lines.ts';

interface Words {
  /** What is wrong, where something is. */
  readonly said: (figure: LineFigure) => string;
  /** The figure's plain name. */
  readonly named: string;
  readonly unit: string;
}

/** Inside the rubric's band of 8 to 20 dB: a ratio that falls short of secure lies clearly on one side of it. */
const insideBandDb = 14;

const words: Readonly<Record<string, Words>> = {
  'timing-spread-share': { said: () => 'uneven in time', named: 'timing spread', unit: '% of a partial' },
  'accent-to-tap-ratio': {
    said: ({ value }) =>
      value < insideBandDb ? 'accents stand out too little' : 'accents stand out very far',
    named: 'accents',
    unit: 'dB over the taps',
  },
  'tap-spread': { said: () => 'taps differ in loudness', named: 'spread of the taps', unit: 'dB' },
  'hand-offset-share': {
    said: ({ low, high }) =>
      low > 0 ? 'the left hand comes late' : high < 0 ? 'the right hand comes late' : 'left hand after right',
    named: 'left hand after right',
    unit: '% of a partial',
  },
};

/**
 * What makes a line weak, in plain words with its figure.
 *
 * @example weakWords(line) // 'uneven in time: 6.1 % of a partial (5.0 to 7.6)'
 */
export function weakWords({ measure, figures, mark }: WeakLine): string {
  const figure = figures[measure]!;
  const { said, named, unit } = words[measure]!;
  const { value, low, high } = figure;
  // What is secure is the weakest there is, but no fault.
  return `${mark.value >= secureScore ? named : said(figure)}: ${rounded(value)} ${unit} (${rounded(low)} to ${rounded(high)})`;
}

/**
 * How a weak line stands to the others, in a sentence.
 *
 * @example standingWords(line) // 'Likely worth 66 points in that (58 to 74), the other lines 84: clearly weaker than the others.'
 */
export function standingWords({ likely, others, apart }: WeakLine): string {
  if (others === null) return 'Nothing else was played to hold it against.';
  const { value, low, high } = likely;
  // Drawn all the way to the others: what lies between is no more than chance.
  if (!apart && Math.round(value) === Math.round(others))
    return 'Lines that are equally good scatter as much by chance: listen before you decide.';
  const points = `Likely worth ${shownScore(value)} points in that (${Math.round(low)} to ${Math.round(high)}), the other lines ${shownScore(others)}`;
  return apart
    ? `${points}: clearly weaker than the others.`
    : `${points}. Not clearly apart from the others: listen before you decide.`;
}
