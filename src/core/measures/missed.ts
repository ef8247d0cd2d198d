import { defineMeasure } from './measure.ts';
import { missedFaults, shareOfSlots } from './share-of-slots.ts';

export const missed = defineMeasure(
  {
    id: 'missed',
    title: 'Missed strokes',
    unit: '%',
    better: 'low',
    alsoBy: ['repeat', 'partial'],
    describes: 'Written strokes that were not heard, as a share of the strokes written.',
    source: 'Wilson 1927 with a design effect for faults that come in clusters.',
  },
  (performance) => [{ scope: {}, outcome: shareOfSlots(performance, missedFaults(performance)) }],
);
