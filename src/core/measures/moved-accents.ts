import { defineMeasure } from './measure.ts';
import { heardAccentsSource, shareOfHeardAccents } from './share-of-heard-accents.ts';
import { shareInterval } from './share-outcome.ts';

export const movedAccents = defineMeasure(
  {
    id: 'moved-accents',
    title: 'Moved accents',
    unit: '%',
    better: 'low',
    alsoBy: ['repeat', 'hand', 'partial'],
    describes: 'Accents that sounded one stroke early or late, as a share of those written.',
    formula:
      '100 · written accents heard one stroke early or late / written accents; runs of turned accents left out',
    interval: shareInterval,
    reading:
      'Near zero: accents sit on their strokes. High: count the beat aloud and let the accent meet the written number.',
    limits: [
      'Moved means: a lost accent right beside a tap that sounded like one.',
      'Whole runs that moved are told as turned round instead.',
    ],
    reasons: ['no-accents', 'no-taps', 'too-few-strokes', 'accents-not-told-from-taps', 'accents-all-turned'],
    source: heardAccentsSource,
  },
  (performance) => [
    { scope: {}, outcome: shareOfHeardAccents(performance, { accents: true, heardAs: 'moved-away' }) },
  ],
);
