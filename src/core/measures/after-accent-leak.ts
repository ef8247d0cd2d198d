import { levelInterval } from './level-effect.ts';
import { defineMeasure } from './measure.ts';
import { besideAccentReasons, tapBesideAccent } from './tap-beside-accent.ts';

/** Whether the tap after an accent keeps some of the accent. */
export const afterAccentLeak = defineMeasure(
  {
    id: 'after-accent-leak',
    title: 'Taps after accents',
    unit: 'dB',
    better: 'near-zero',
    alsoBy: ['hand'],
    describes:
      'How much louder (or, with a minus, softer) taps right after an accent are than all other taps of the same hand. Where the accent always falls on one partial, what that partial does by itself is part of it.',
    formula:
      'c: least-squares level of taps right after an accent against all other taps, hand fitted first, dB',
    interval: levelInterval,
    reading:
      'Near zero: the tap after an accent is as low as any. Plus: some of the accent stays in it. Play accent and tap alone, slowly, until the tap is soft.',
    limits: [
      "The accent's own ringing is taken off; on wet rooms and snares a part of it may stay.",
      'Where accents keep to one partial, what that partial does by itself is part of it.',
    ],
    reasons: besideAccentReasons,
    source:
      'Additive model of levels by least squares, Newey & West 1987 by beats; that taps after an accent should stay low is common practice.',
  },
  (performance) => [{ scope: {}, outcome: tapBesideAccent(performance, 'after') }],
);
