import { accentsAndTaps } from './level-classes.ts';
import { levelSpread, levelSpreadSource } from './level-spread.ts';
import { defineMeasure } from './measure.ts';
import { notApplicable } from './outcomes.ts';
import { handScopes } from './scopes.ts';
import { spreadInterval } from './spread-outcome.ts';

/** How much taps differ in level. */
export const tapSpread = defineMeasure(
  {
    id: 'tap-spread',
    title: 'Spread of the taps',
    unit: 'dB',
    better: 'low',
    alsoBy: ['repeat', 'partial'],
    describes: 'How much taps of the same hand and partial differ in loudness.',
    formula:
      'sqrt( sum of (level − mean of its kind)² / (N − kinds) − e² ), dB; kind: taps of one partial and hand; slips left out; e: error of finding a level',
    interval: `${spreadInterval} Degrees of freedom: 0.8 · (N − kinds).`,
    reading:
      'Low: the taps whisper alike. High: play the line softly without accents, one loudness in both hands, and put the accents back.',
    limits: [
      "A louder hand or partial doesn't widen it; other figures tell those.",
      'Levels far off count as slips: they are left out and pointed at.',
      "Takes made with other pads, phones or places don't compare.",
    ],
    reasons: ['too-few-strokes', 'found-too-coarsely', 'no-taps'],
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
