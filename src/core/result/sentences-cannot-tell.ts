import { dimensionName, measureList, measureName } from './names.ts';
import { numberOf, type SentenceTable, textOf } from './sentence-table.ts';

/** Strokes rounded up to whole dozens: four triplets. */
const dozens = (strokes: number) => Math.ceil(strokes / 12) * 12;

/** Nobody is sent into longer takes than this at one go, strokes: our judgement, for the sake of the arms. */
const longTake = 288;

/** What a take leaves open, and the cheapest recording that would tell. `not-measured` stands in `sentences.ts`. */
export const cannotTellSentences: SentenceTable = {
  'too-few-strokes-to-score': (f) =>
    `No score: ${textOf(f, 'strokes')} strokes were graded and ${textOf(f, 'needed')} are needed. Record the line with more repeats.`,
  'too-little-measured': (f) =>
    `No score: only ${textOf(f, 'scored')} of ${textOf(f, 'of')} parts of it could be measured. The reasons stand below; mend the first of them and record again.`,
  'dimension-not-scored': (f) =>
    `"${dimensionName(textOf(f, 'dimension'))}" isn't part of the score of this take.`,
  'measure-left-out': (f) =>
    `"${measureName(textOf(f, 'measure'))}" isn't part of the score${f.line === undefined ? '' : ` for line ${f.line}`}.`,
  'no-click': () =>
    'Whether you play ahead of a click or behind it: no click was heard while you played. Record once with the click played from a speaker.',
  'no-click-no-tempo-asked': () =>
    'Whether you hold a given tempo, or play ahead of a click or behind it: no click was found and no tempo asked for. Write a tempo into the sheet, or record once with the click played from a speaker.',
  'hands-not-told': () =>
    'After a missed or doubled stroke the hands may have changed places, so right is not held against left. Record the line once more; a take with every stroke in place tells them apart.',
  'too-wide-to-tell': (f) => {
    const needed = dozens(Math.max(numberOf(f, 'strokes'), numberOf(f, 'has') + 1));
    const next =
      needed <= longTake
        ? `A take of about ${needed} strokes would tell.`
        : 'Takes on several days, seen together, would tell.';
    return `Whether this is secure or not yet: ${measureList(textOf(f, 'measures'))}. ${textOf(f, 'has')} strokes leave it open. ${next}`;
  },
  'never-from-sound': () =>
    'How you move the sticks: sound says nothing about technique, stick height, grip or tension. Ask your teacher, or film yourself.',
  'needs-accents-and-taps-in-both-hands': () =>
    'The hands can only be compared in a line with accents and taps in each of them.',
};
