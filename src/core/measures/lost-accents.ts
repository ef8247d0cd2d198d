import { defineMeasure } from './measure.ts';
import { heardAccentsSource, shareOfHeardAccents } from './share-of-heard-accents.ts';

export const lostAccents = defineMeasure(
  {
    id: 'lost-accents',
    title: 'Lost accents',
    unit: '%',
    better: 'low',
    alsoBy: ['repeat', 'hand', 'partial'],
    describes: 'Written accents that sounded like taps, as a share of those written.',
    source: heardAccentsSource,
  },
  (performance) => [
    { scope: {}, outcome: shareOfHeardAccents(performance, { accents: true, heardAs: 'lost' }) },
  ],
);
