import { defineMeasure } from './measure.ts';
import { tapBesideAccent } from './tap-beside-accent.ts';

/** Whether the tap before an accent already rises towards it. */
export const beforeAccentLift = defineMeasure(
  {
    id: 'before-accent-lift',
    title: 'Taps right before an accent',
    unit: 'dB',
    better: 'near-zero',
    alsoBy: ['hand'],
    describes:
      'How much louder (or, with a minus, softer) taps right before an accent are than all other taps of the same hand. A tap between two accents counts as after the first.',
    source:
      'Additive model of levels by least squares, Newey & West 1987 by beats; that taps before an accent should stay low is common practice.',
  },
  (performance) => [{ scope: {}, outcome: tapBesideAccent(performance, 'before') }],
);
