import type { Scope } from '../result/take-result.ts';
import { firstAtLeast } from '../stats/first-at-least.ts';
import { separationInterval } from '../stats/separation-interval.ts';
import { separationProbability } from '../stats/separation-probability.ts';
import { accentsAndTaps, levelsOf } from './level-classes.ts';
import { levelsRefusal } from './levels-refusal.ts';
import { defineMeasure, type Part } from './measure.ts';
import { measured } from './outcomes.ts';
import type { PlayedStroke } from './played-stroke.ts';
import { handScopes } from './scopes.ts';
import { worstStrokes } from './worst-strokes.ts';

/** 97.5 % point of the normal distribution. */
const normal975 = 1.959963984540054;

/** How surely accents and taps are told apart by loudness alone. */
export const separation = defineMeasure(
  {
    id: 'separation',
    title: 'Accent beats tap',
    unit: 'probability',
    better: 'high',
    alsoBy: ['repeat'],
    describes: 'How likely it is that an accent picked at random is louder than a tap picked at random.',
    formula: 'share of all pairs (accent, tap) in which the accent is louder; ties count half',
    interval: "Newcombe's method 5, which stays within 0 and 100 % and doesn't collapse at its ends.",
    reading:
      'Near 100 %: no tap can be taken for an accent. Lower: some are mixed up; the strokes it points at are where.',
    limits: [
      'It counts which is louder, not by how much; read the ratio beside it.',
      'Its range errs on the wide side.',
    ],
    reasons: ['no-accents', 'no-taps', 'too-few-accents-or-taps'],
    source: 'Mann & Whitney 1947; interval by method 5 of Newcombe 2006, which errs on the wide side.',
  },
  (performance) => {
    const partOf = (scope: Scope, belongs: (stroke: PlayedStroke) => boolean): Part => {
      const own = performance.strokes.filter(belongs);
      const { accents, taps } = accentsAndTaps(own);
      const written = performance.asked.filter(
        (slot) => !slot.grace && (scope.hand === undefined || slot.hand === scope.hand),
      );
      const accentsWritten = written.filter((slot) => slot.accent).length;
      const refusal = levelsRefusal(
        { accents: accents.length, taps: taps.length },
        { accents: accentsWritten, taps: written.length - accentsWritten },
      );
      if (refusal) return { scope, outcome: refusal };
      const value = separationProbability(levelsOf(accents), levelsOf(taps));
      const loudness = levelsOf(accents).sort();
      const softness = levelsOf(taps).sort();
      const pointsAt = worstStrokes(own, ({ slot, levelDb }) =>
        slot.accent
          ? (taps.length - firstAtLeast(softness, levelDb)) / taps.length
          : firstAtLeast(loudness, levelDb) / accents.length,
      );
      const interval = separationInterval(value, accents.length, taps.length, normal975);
      return { scope, outcome: measured({ value, ...interval, strokes: own.length, pointsAt }) };
    };
    return [
      partOf({}, () => true),
      ...handScopes(performance).map((hand) => partOf({ hand }, (s) => s.hand === hand)),
    ];
  },
);
