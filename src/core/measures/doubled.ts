import { defineMeasure } from './measure.ts';
import { shareOfSlots, surplusFaults } from './share-of-slots.ts';

export const doubled = defineMeasure(
  {
    id: 'doubled',
    title: 'Doubled strokes',
    unit: '%',
    better: 'low',
    alsoBy: ['repeat'],
    describes: 'Strokes that sounded twice where one is written, as a share of the strokes written.',
    source: 'Wilson 1927 with a design effect for faults that come in clusters.',
  },
  (performance) => [
    {
      scope: {},
      outcome: shareOfSlots(performance, surplusFaults(performance, performance.alignment.doubled)),
    },
  ],
);
