import { defineMeasure } from './measure.ts';
import { heardAccentsSource, shareOfHeardAccents } from './share-of-heard-accents.ts';
import { shareInterval } from './share-outcome.ts';

export const addedAccents = defineMeasure(
  {
    id: 'added-accents',
    title: 'Added accents',
    unit: '%',
    better: 'low',
    alsoBy: ['repeat', 'hand', 'partial'],
    describes: 'Taps that sounded like accents, as a share of the taps.',
    formula: '100 · taps that sounded like accents / written taps; runs of turned accents left out',
    interval: shareInterval,
    reading:
      'Near zero: no tap jumps out. High: listen to the spots; a tap beside an accent often borrows from it.',
    limits: [
      'Accents and taps must lie three of their own spreads apart.',
      "A tap just louder than the rest isn't an accent.",
    ],
    reasons: ['no-accents', 'no-taps', 'too-few-strokes', 'accents-not-told-from-taps', 'accents-all-turned'],
    source: heardAccentsSource,
  },
  (performance) => [
    { scope: {}, outcome: shareOfHeardAccents(performance, { accents: false, heardAs: 'added' }) },
  ],
);
