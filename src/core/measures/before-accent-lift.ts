import { levelInterval } from './level-effect.ts';
import { defineMeasure } from './measure.ts';
import { besideAccentReasons, tapBesideAccent } from './tap-beside-accent.ts';

/** Whether the tap before an accent already rises towards it. */
export const beforeAccentLift = defineMeasure(
  {
    id: 'before-accent-lift',
    title: 'Taps before accents',
    unit: 'dB',
    better: 'near-zero',
    alsoBy: ['hand'],
    describes:
      'How much louder (or, with a minus, softer) taps right before an accent are than all other taps of the same hand. A tap between two accents counts as after the first.',
    formula:
      'c: least-squares level of taps right before an accent against all other taps, hand fitted first, dB',
    interval: levelInterval,
    reading:
      'Near zero: nothing gives the accent away. Plus: the tap before it already rises. Minus: it is ducked. Keep the tap as soft as its neighbours.',
    limits: [
      'A tap between two accents counts as after the first.',
      'Where accents keep to one partial, what that partial does by itself is part of it.',
    ],
    reasons: besideAccentReasons,
    source:
      'Additive model of levels by least squares, Newey & West 1987 by beats; that taps before an accent should stay low is common practice.',
  },
  (performance) => [{ scope: {}, outcome: tapBesideAccent(performance, 'before') }],
);
