import { type SentenceTable, textOf } from './sentence-table.ts';

/** Why the strokes can't be laid on the sheet with confidence, and what to do next. */
export const alignmentSentences: SentenceTable = {
  'nothing-fits': (f) =>
    `What was heard doesn't fit the sheet's ${textOf(f, 'slots')} strokes anywhere. Check that it is the sheet you played, and that the pad is louder than everything round it.`,
  'many-unmatched': (f) =>
    `Only ${textOf(f, 'matched')} of ${textOf(f, 'slots')} written strokes were found. If you played them all, put the phone nearer to the pad and switch off noise suppression; if not, choose the sheet you played.`,
  'mostly-outside': (f) =>
    `Only ${textOf(f, 'inside')} of ${textOf(f, 'strokes')} strokes heard belong to the sheet. Check that it is the sheet you played, or record without other playing round it.`,
  'phase-not-told': () =>
    'Where the beat begins could not be heard: the strokes are alike, the rhythm has no rest, and there is no click. The first stroke was taken for the first one written. Record with the click played from a speaker to be sure.',
};
