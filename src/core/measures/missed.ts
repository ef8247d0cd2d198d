import { defineMeasure } from './measure.ts';
import { missedFaults, shareOfSlots } from './share-of-slots.ts';
import { shareInterval } from './share-outcome.ts';

export const missed = defineMeasure(
  {
    id: 'missed',
    title: 'Missed strokes',
    unit: '%',
    better: 'low',
    alsoBy: ['repeat', 'partial'],
    describes: 'Written strokes that were not heard, as a share of the strokes written.',
    formula: '100 · written strokes not heard / written strokes of the graded part',
    interval: shareInterval,
    reading:
      'Near zero: every stroke sounds. High: taps too soft for the recording, or strokes left out; listen to the spots to tell which.',
    limits: [
      "A tap that drowns in noise or in an accent's tail counts as missed.",
      "Abandoned runs aren't counted.",
    ],
    reasons: ['too-few-strokes'],
    source: 'Wilson 1927 with a design effect for faults that come in clusters.',
  },
  (performance) => [{ scope: {}, outcome: shareOfSlots(performance, missedFaults(performance)) }],
);
