import type { Scope } from '../result/take-result.ts';
import { median } from '../stats/median.ts';
import { accentsAndTaps, levelsOf } from './level-classes.ts';
import { levelsRefusal } from './levels-refusal.ts';
import { defineMeasure, type Part } from './measure.ts';
import { measured } from './outcomes.ts';
import type { PlayedStroke } from './played-stroke.ts';
import { ratioOfMedians } from './ratio-of-medians.ts';
import { handScopes, lineScopes } from './scopes.ts';
import { worstStrokes } from './worst-strokes.ts';

/** How far accents stand above taps; survives the microphone's place, which raises or lowers both. */
export const accentToTapRatio = defineMeasure(
  {
    id: 'accent-to-tap-ratio',
    title: 'Accents above taps',
    unit: 'dB',
    better: 'within-band',
    alsoBy: ['repeat'],
    describes:
      'How far the middle accent stands above the middle tap. More is not always better: a band is asked for.',
    formula: 'median level of accents − median level of taps, dB; medians smoothed (Harrell & Davis)',
    interval:
      "Jackknife pulls of the strokes, summed by beat, neighbouring beats alike; Student's t of (beats − 1) / 1.5.",
    reading:
      'Inside the band: accents stand out, taps still sound. Below it: bring the taps down rather than the accents up. Above it: taps may vanish in a room. Right against left is the headline for the hands.',
    limits: [
      "More isn't better beyond the band.",
      'Gain control in a phone flattens it.',
      'It says nothing of stick height or force.',
    ],
    reasons: ['no-accents', 'no-taps', 'too-few-accents-or-taps'],
    source:
      'Difference of medians as Harrell & Davis 1982 estimate them; jackknife standard errors summed by beat. Band 8 to 20 dB unless the sheet sets another: our judgement.',
  },
  (performance) => {
    const partOf = (scope: Scope, belongs: (stroke: PlayedStroke) => boolean): Part => {
      const own = performance.strokes.filter(belongs);
      const { accents, taps } = accentsAndTaps(own);
      const written = performance.asked.filter(
        (slot) =>
          !slot.grace &&
          (scope.line === undefined || slot.line === scope.line) &&
          (scope.hand === undefined || slot.hand === scope.hand),
      );
      const accentsWritten = written.filter((slot) => slot.accent).length;
      const refusal = levelsRefusal(
        { accents: accents.length, taps: taps.length },
        { accents: accentsWritten, taps: written.length - accentsWritten },
      );
      if (refusal) return { scope, outcome: refusal };
      const middle = { accent: median(levelsOf(accents)), tap: median(levelsOf(taps)) };
      const pointsAt = worstStrokes(own, ({ slot, levelDb }) =>
        slot.accent ? middle.accent - levelDb : levelDb - middle.tap,
      );
      return { scope, outcome: measured({ ...ratioOfMedians(own), strokes: own.length, pointsAt }) };
    };
    return [
      partOf({}, () => true),
      ...handScopes(performance).map((hand) => partOf({ hand }, (s) => s.hand === hand)),
      ...lineScopes(performance).map((line) => partOf({ line }, (s) => s.slot.line === line)),
    ];
  },
);
