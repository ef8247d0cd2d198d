import { defineMeasure } from './measure.ts';
import { heardAccentsSource, shareOfHeardAccents } from './share-of-heard-accents.ts';
import { shareInterval } from './share-outcome.ts';

export const lostAccents = defineMeasure(
  {
    id: 'lost-accents',
    title: 'Lost accents',
    unit: '%',
    better: 'low',
    alsoBy: ['repeat', 'hand', 'partial'],
    describes: 'Written accents that sounded like taps, as a share of those written.',
    formula:
      '100 · written accents that sounded like taps / written accents; runs of turned accents left out',
    interval: shareInterval,
    reading:
      'Near zero: every accent can be heard. High: listen to the spots; often one hand or one partial loses its accents.',
    limits: [
      'Accents and taps must lie three of their own spreads apart.',
      "An accent just weaker than the rest isn't lost.",
    ],
    reasons: ['no-accents', 'no-taps', 'too-few-strokes', 'accents-not-told-from-taps', 'accents-all-turned'],
    source: heardAccentsSource,
  },
  (performance) => [
    { scope: {}, outcome: shareOfHeardAccents(performance, { accents: true, heardAs: 'lost' }) },
  ],
);
