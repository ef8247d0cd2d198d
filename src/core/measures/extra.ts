import { defineMeasure } from './measure.ts';
import { shareOfSlots, surplusFaults } from './share-of-slots.ts';
import { shareInterval } from './share-outcome.ts';

export const extra = defineMeasure(
  {
    id: 'extra',
    title: 'Extra strokes',
    unit: '%',
    better: 'low',
    alsoBy: ['repeat'],
    describes: 'Strokes heard while playing that nobody wrote, as a share of the strokes written.',
    formula: '100 · strokes heard between written ones / written strokes of the graded part',
    interval: shareInterval,
    reading:
      'Near zero: nothing else was struck. High: rebounds, a stick on the rim, or another player; listen to the spots.',
    limits: [
      'Other sounds that resemble the pad may count.',
      'Before and after the exercise nothing is extra.',
    ],
    reasons: ['too-few-strokes'],
    source: 'Wilson 1927 with a design effect for faults that come in clusters.',
  },
  (performance) => [
    {
      scope: {},
      outcome: shareOfSlots(performance, surplusFaults(performance, performance.alignment.extra)),
    },
  ],
);
