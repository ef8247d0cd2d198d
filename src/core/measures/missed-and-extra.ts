import { defineMeasure } from './measure.ts';
import { missedFaults, shareOfSlots, surplusFaults } from './share-of-slots.ts';

export const missedAndExtra = defineMeasure(
  {
    id: 'missed-and-extra',
    title: 'Missed, extra and doubled',
    unit: '%',
    better: 'low',
    alsoBy: ['repeat'],
    describes: 'Strokes that were missed, extra or doubled, together, as a share of the strokes written.',
    source: 'Wilson 1927 with a design effect for faults that come in clusters.',
  },
  (performance) => {
    const { extra, doubled } = performance.alignment;
    const faults = [...missedFaults(performance), ...surplusFaults(performance, [...extra, ...doubled])];
    return [{ scope: {}, outcome: shareOfSlots(performance, faults) }];
  },
);
