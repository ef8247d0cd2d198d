import { accentsAndTaps } from './level-classes.ts';
import { levelSpread, levelSpreadSource } from './level-spread.ts';
import { defineMeasure } from './measure.ts';
import { notApplicable } from './outcomes.ts';
import { handScopes } from './scopes.ts';

/** How much accents differ in level. */
export const accentSpread = defineMeasure(
  {
    id: 'accent-spread',
    title: 'Spread of the accents',
    unit: 'dB',
    better: 'low',
    alsoBy: ['repeat', 'partial'],
    describes: 'How much accents of the same hand and partial differ in loudness.',
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
