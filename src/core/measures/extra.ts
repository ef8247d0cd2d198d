import { defineMeasure } from './measure.ts';
import { shareOfSlots, surplusFaults } from './share-of-slots.ts';

export const extra = defineMeasure(
  {
    id: 'extra',
    title: 'Extra strokes',
    unit: '%',
    better: 'low',
    alsoBy: ['repeat'],
    describes: 'Strokes heard while playing that nobody wrote, as a share of the strokes written.',
    source: 'Wilson 1927 with a design effect for faults that come in clusters.',
  },
  (performance) => [
    {
      scope: {},
      outcome: shareOfSlots(performance, surplusFaults(performance, performance.alignment.extra)),
    },
  ],
);
