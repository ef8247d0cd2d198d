import { defineMeasure } from './measure.ts';
import { heardAccentsSource, shareOfHeardAccents } from './share-of-heard-accents.ts';

export const addedAccents = defineMeasure(
  {
    id: 'added-accents',
    title: 'Added accents',
    unit: '%',
    better: 'low',
    alsoBy: ['repeat', 'hand', 'partial'],
    describes: 'Taps that sounded like accents, as a share of the taps.',
    source: heardAccentsSource,
  },
  (performance) => [
    { scope: {}, outcome: shareOfHeardAccents(performance, { accents: false, heardAs: 'added' }) },
  ],
);
