import { accentsAndTaps } from './level-classes.ts';
import { levelSpread, levelSpreadSource } from './level-spread.ts';
import { defineMeasure } from './measure.ts';
import { notApplicable } from './outcomes.ts';
import { handScopes } from './scopes.ts';

/** How much taps differ in level. */
export const tapSpread = defineMeasure(
  {
    id: 'tap-spread',
    title: 'Spread of the taps',
    unit: 'dB',
    better: 'low',
    alsoBy: ['repeat', 'partial'],
    describes: 'How much taps of the same hand and partial differ in loudness.',
    source: levelSpreadSource,
  },
  (performance) => {
    if (performance.asked.every((slot) => slot.grace || slot.accent)) {
      return [{ scope: {}, outcome: notApplicable('no-taps') }];
    }
    const { taps } = accentsAndTaps(performance.strokes);
    return [
      { scope: {}, outcome: levelSpread(taps) },
      ...handScopes(performance).map((hand) => ({
        scope: { hand },
        outcome: levelSpread(taps.filter((s) => s.hand === hand)),
      })),
    ];
  },
);
