import { accentsAndTaps } from './level-classes.ts';
import { levelSpread, levelSpreadSource } from './level-spread.ts';
import { defineMeasure } from './measure.ts';
import { notApplicable } from './outcomes.ts';
import { handScopes } from './scopes.ts';
import { spreadInterval } from './spread-outcome.ts';

/** How much accents differ in level. */
export const accentSpread = defineMeasure(
  {
    id: 'accent-spread',
    title: 'Spread of the accents',
    unit: 'dB',
    better: 'low',
    alsoBy: ['repeat', 'partial'],
    describes: 'How much accents of the same hand and partial differ in loudness.',
    formula:
      'sqrt( sum of (level − mean of its kind)² / (N − kinds) − e² ), dB; kind: accents of one partial and hand; slips left out; e: error of finding a level',
    interval: `${spreadInterval} Degrees of freedom: 0.8 · (N − kinds).`,
    reading:
      'Low: accents match within each hand and partial. High: leave room between accents and play each at one comfortable loudness.',
    limits: [
      "A louder hand or partial doesn't widen it; other figures tell those.",
      'Levels far off count as slips: they are left out and pointed at.',
      "Takes made with other pads, phones or places don't compare.",
    ],
    reasons: ['too-few-strokes', 'found-too-coarsely', 'no-accents'],
    source: levelSpreadSource,
  },
  (performance) => {
    if (performance.asked.every((slot) => slot.grace || !slot.accent)) {
      return [{ scope: {}, outcome: notApplicable('no-accents') }];
    }
    const { accents } = accentsAndTaps(performance.strokes);
    return [
      { scope: {}, outcome: levelSpread(accents) },
      ...handScopes(performance).map((hand) => ({
        scope: { hand },
        outcome: levelSpread(accents.filter((s) => s.hand === hand)),
      })),
    ];
  },
);
