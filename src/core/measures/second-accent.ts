import { beatOfSlot } from './beat-of.ts';
import { accentsAndTaps, fewestLevels } from './level-classes.ts';
import { handTerm, type LevelTerm, levelEffect, levelInterval } from './level-effect.ts';
import { levelEffectOutcome } from './level-effect-outcome.ts';
import { defineMeasure } from './measure.ts';
import { notApplicable, notMeasurable } from './outcomes.ts';
import type { Performance } from './performance.ts';

/** Main accents of each beat that has exactly two, by their partials in order. */
function pairsWritten({ asked }: Performance): ReadonlyMap<string, readonly number[]> {
  const accents = new Map<string, number[]>();
  for (const slot of asked) {
    if (slot.grace || !slot.accent) continue;
    accents.set(beatOfSlot(slot), [...(accents.get(beatOfSlot(slot)) ?? []), slot.partial]);
  }
  return new Map([...accents].filter(([, partials]) => partials.length === 2));
}

/** Second accent of a beat with two against its first. */
export const secondAccent = defineMeasure(
  {
    id: 'second-accent',
    title: 'Second accent of two',
    unit: 'dB',
    better: 'near-zero',
    describes:
      'In beats with two accents, how much louder (or, with a minus, softer) the second is than the first, hand for hand.',
    formula:
      'c: least-squares level of second accents against first ones of the same beat, hand fitted first, dB',
    interval: levelInterval,
    reading:
      'Near zero: both accents weigh the same. Minus: the second one fades; slower, with the second one thought of as the goal.',
    limits: [
      'Only beats with exactly two accents count.',
      "Where the second always has the other hand the two can't be told apart.",
    ],
    reasons: ['no-accent-pairs', 'too-few-strokes', 'pair-goes-with-hand'],
    source: 'Additive model of levels by least squares, Newey & West 1987 by beats.',
  },
  (performance) => {
    const pairs = pairsWritten(performance);
    if (pairs.size === 0) return [{ scope: {}, outcome: notApplicable('no-accent-pairs') }];
    const { accents } = accentsAndTaps(performance.strokes);
    const own = accents.filter(({ slot }) => pairs.has(beatOfSlot(slot)));
    const term: LevelTerm = ({ slot }) => (pairs.get(beatOfSlot(slot))![1] === slot.partial ? 1 : 0);
    const seconds = own.reduce((sum, s) => sum + term(s), 0);
    const least = Math.min(seconds, own.length - seconds);
    if (least < fewestLevels) {
      return [
        { scope: {}, outcome: notMeasurable('too-few-strokes', { strokes: least, needed: fewestLevels }) },
      ];
    }
    const effect = levelEffect(own, { before: [handTerm], term });
    const outcome =
      effect === null ? notApplicable('pair-goes-with-hand') : levelEffectOutcome(effect, own, term);
    return [{ scope: {}, outcome }];
  },
);
