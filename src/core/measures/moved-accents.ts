import { defineMeasure } from './measure.ts';
import { heardAccentsSource, shareOfHeardAccents } from './share-of-heard-accents.ts';

export const movedAccents = defineMeasure(
  {
    id: 'moved-accents',
    title: 'Moved accents',
    unit: '%',
    better: 'low',
    alsoBy: ['repeat', 'hand', 'partial'],
    describes: 'Accents that sounded one stroke early or late, as a share of those written.',
    source: heardAccentsSource,
  },
  (performance) => [
    { scope: {}, outcome: shareOfHeardAccents(performance, { accents: true, heardAs: 'moved-away' }) },
  ],
);
