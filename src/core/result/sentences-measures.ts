import { rounded } from './figures.ts';
import { type Facts, numberOf, type SentenceTable, textOf } from './sentence-table.ts';

const withUnit = (facts: Facts, name: string) => `${rounded(numberOf(facts, name))} ${textOf(facts, 'unit')}`;

/** Why a measure has no figure, and what would give one. `hands-not-told` stands with the open questions. */
export const measureSentences: SentenceTable = {
  'too-few-strokes': (f) =>
    `${textOf(f, 'strokes')} strokes are too few; ${textOf(f, 'needed')} are needed. Record more repeats in one take.`,
  'too-few-accents-or-taps': (f) =>
    `${textOf(f, 'accents')} accents and ${textOf(f, 'taps')} taps are too few; ${textOf(f, 'needed')} of each are needed. Record more repeats in one take.`,
  'too-broken-up': () =>
    'The take is in pieces too short to find a tempo in. Record at least four beats in a row.',
  'found-too-coarsely': (f) =>
    `The strokes could only be found to within ${withUnit(f, 'error')}, too near the figure itself, ${withUnit(f, 'spread')}. Record closer to the pad, in a quieter room.`,
  'one-hand-only': () => 'The exercise is for one hand, so there are no hands to compare.',
  'one-partial-only': () => 'The beat is not divided, so there are no partials to compare.',
  'no-accents': () => 'The exercise has no accents.',
  'no-taps': () => 'Every stroke of the exercise is an accent.',
  'no-such-place': () => 'No stroke of the exercise stands there.',
  'accent-goes-with-partial': () =>
    'The accent always falls on the same partial, so what it does to the rhythm and where the partial lies are one. Add a line whose accent falls elsewhere.',
  'hand-goes-with-partial': () =>
    'Each partial is always played by the same hand, so hands and partials are one. Add a line with another sticking.',
  'no-tempo-asked': () => 'The sheet asks for no tempo, so there is none to compare with.',
};
