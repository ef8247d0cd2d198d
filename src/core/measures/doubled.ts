import { defineMeasure } from './measure.ts';
import { shareOfSlots, surplusFaults } from './share-of-slots.ts';
import { shareInterval } from './share-outcome.ts';

export const doubled = defineMeasure(
  {
    id: 'doubled',
    title: 'Doubled strokes',
    unit: '%',
    better: 'low',
    alsoBy: ['repeat'],
    describes: 'Strokes that sounded twice where one is written, as a share of the strokes written.',
    formula: '100 · strokes that sounded twice / written strokes of the graded part',
    interval: shareInterval,
    reading:
      'Near zero: one stroke, one sound. High: the stick bounces once more than asked; listen to the spots.',
    limits: [
      'After a doubled stroke the hands may have changed places, and hand figures wait until that is clear.',
    ],
    reasons: ['too-few-strokes'],
    source: 'Wilson 1927 with a design effect for faults that come in clusters.',
  },
  (performance) => [
    {
      scope: {},
      outcome: shareOfSlots(performance, surplusFaults(performance, performance.alignment.doubled)),
    },
  ],
);
