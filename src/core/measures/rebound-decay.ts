import { accentsAndTaps, fewestLevels } from './level-classes.ts';
import { handTerm, type LevelTerm, levelEffect, levelInterval } from './level-effect.ts';
import { levelEffectOutcome } from './level-effect-outcome.ts';
import { defineMeasure } from './measure.ts';
import { notApplicable, notMeasurable } from './outcomes.ts';
import { placeInRow } from './place-in-row.ts';

/** Strokes deeper in a row than this belong to playing with one hand, not to a double or triple. Our judgement. */
const deepest = 3;

/** How the level goes from tap to tap when one hand plays several in a row. */
export const reboundDecay = defineMeasure(
  {
    id: 'rebound-decay',
    title: 'Taps in a row',
    unit: 'dB',
    better: 'near-zero',
    alsoBy: ['hand'],
    describes:
      'How much louder (or, with a minus, softer) each tap is than the one before it when one hand plays several strokes in a row, what an accent does to the tap after it taken out.',
    formula:
      'c: least-squares change of level from one tap to the next in a row on one hand, hand and a preceding accent fitted first, dB a stroke',
    interval: levelInterval,
    reading:
      'Near zero: doubles and triples are even. Minus: later strokes fade; play the row slower, each stroke of one loudness. Plus: they grow.',
    limits: ['Only rows of up to four strokes count.', "It can't tell a rebound from a stroke played anew."],
    reasons: ['no-rows-on-a-hand', 'no-taps-in-a-row', 'too-few-strokes', 'row-goes-with-accent'],
    source:
      'Additive model of levels by least squares, Newey & West 1987 by beats; that later strokes of a double or triple lose level is common practice among teachers.',
  },
  (performance) => {
    const places = placeInRow(performance.slots);
    if (performance.asked.every((slot) => slot.grace || places.get(slot.index) === 0)) {
      return [{ scope: {}, outcome: notApplicable('no-rows-on-a-hand') }];
    }
    const taps = accentsAndTaps(performance.strokes).taps.filter(
      ({ slot }) => places.get(slot.index)! <= deepest,
    );
    const later = taps.filter(({ slot }) => places.get(slot.index)! > 0).length;
    if (later === 0) return [{ scope: {}, outcome: notApplicable('no-taps-in-a-row') }];
    if (Math.min(later, taps.length - later) < fewestLevels && later < 2 * fewestLevels) {
      return [
        { scope: {}, outcome: notMeasurable('too-few-strokes', { strokes: later, needed: fewestLevels }) },
      ];
    }
    const term: LevelTerm = ({ slot }) => places.get(slot.index)!;
    const afterAccent: LevelTerm = ({ place }) => (place === 'after' ? 1 : 0);
    const effect = levelEffect(taps, { before: [handTerm, afterAccent], term });
    const outcome =
      effect === null ? notApplicable('row-goes-with-accent') : levelEffectOutcome(effect, taps, term);
    return [{ scope: {}, outcome }];
  },
);
