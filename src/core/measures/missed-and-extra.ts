import { defineMeasure } from './measure.ts';
import { missedFaults, shareOfSlots, surplusFaults } from './share-of-slots.ts';
import { shareInterval } from './share-outcome.ts';

export const missedAndExtra = defineMeasure(
  {
    id: 'missed-and-extra',
    title: 'Missed and extra',
    unit: '%',
    better: 'low',
    alsoBy: ['repeat'],
    describes: 'Strokes that were missed, extra or doubled, together, as a share of the strokes written.',
    formula: '100 · (missed + extra + doubled strokes) / written strokes of the graded part',
    interval: shareInterval,
    reading:
      'Near zero: the line stands as written. High: slower, until every stroke is there; other figures mean little before that.',
    limits: ['It is the sum of three different faults; read them one by one.'],
    reasons: ['too-few-strokes'],
    source: 'Wilson 1927 with a design effect for faults that come in clusters.',
  },
  (performance) => {
    const { extra, doubled } = performance.alignment;
    const faults = [...missedFaults(performance), ...surplusFaults(performance, [...extra, ...doubled])];
    return [{ scope: {}, outcome: shareOfSlots(performance, faults) }];
  },
);
