import { handsRefusal } from './hands-refusal.ts';
import { fewestLevels } from './level-classes.ts';
import { handTerm, type LevelTerm, levelEffect, levelInterval, partialTerms } from './level-effect.ts';
import { levelEffectOutcome } from './level-effect-outcome.ts';
import { defineMeasure } from './measure.ts';
import { notApplicable, notMeasurable } from './outcomes.ts';

/** Left hand's level less the right hand's, as recorded: for reading, never for a score. */
export const handLevel = defineMeasure(
  {
    id: 'hand-level',
    title: 'Left over right, level',
    unit: 'dB',
    better: 'near-zero',
    alsoBy: ['partial'],
    describes:
      "How much louder (or, with a minus, softer) the left hand was recorded, accents and partials allowed for. The microphone's place, the spot struck and the pair of sticks change it, so it is never scored.",
    formula:
      'c: least-squares level of left-hand strokes against right-hand strokes, accent and partial fitted first, dB',
    interval: levelInterval,
    reading:
      "Read it before trusting other levels: many decibels mean that the phone stood by one hand. For the hands' own contrast read the ratio of each hand.",
    limits: [
      'Microphone, spot on the pad and pair of sticks make it as much as the player does.',
      'Never scored.',
    ],
    reasons: ['one-hand-only', 'hands-not-told', 'too-few-strokes', 'hand-goes-with-partial'],
    source: 'Additive model of levels by least squares, Newey & West 1987 by beats.',
  },
  (performance) => {
    const refusal = handsRefusal(performance);
    if (refusal) return [{ scope: {}, outcome: refusal }];
    const told = performance.strokes.filter((s) => s.hand !== null);
    const left = told.filter((s) => s.hand === 'L').length;
    const least = Math.min(left, told.length - left);
    if (least < fewestLevels) {
      return [
        { scope: {}, outcome: notMeasurable('too-few-strokes', { strokes: least, needed: fewestLevels }) },
      ];
    }
    const accent: LevelTerm = ({ slot }) => (slot.accent ? 1 : 0);
    const others = partialTerms(told).slice(1);
    const effect = levelEffect(told, { before: [accent, ...others], term: handTerm });
    const outcome =
      effect === null ? notApplicable('hand-goes-with-partial') : levelEffectOutcome(effect, told, handTerm);
    return [{ scope: {}, outcome }];
  },
);
