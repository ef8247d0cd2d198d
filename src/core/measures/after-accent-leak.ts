import { defineMeasure } from './measure.ts';
import { tapBesideAccent } from './tap-beside-accent.ts';

/** Whether the tap after an accent keeps some of the accent. */
export const afterAccentLeak = defineMeasure(
  {
    id: 'after-accent-leak',
    title: 'Taps right after an accent',
    unit: 'dB',
    better: 'near-zero',
    alsoBy: ['hand'],
    describes:
      'How much louder (or, with a minus, softer) taps right after an accent are than all other taps of the same hand. Where the accent always falls on one partial, what that partial does by itself is part of it.',
    source:
      'Additive model of levels by least squares, Newey & West 1987 by beats; that taps after an accent should stay low is common practice.',
  },
  (performance) => [{ scope: {}, outcome: tapBesideAccent(performance, 'after') }],
);
