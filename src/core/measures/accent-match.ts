import type { Scope } from '../result/take-result.ts';
import { largestFigure } from './largest-of.ts';
import { accentsAndTaps, fewestLevels } from './level-classes.ts';
import { type LevelTerm, levelEffect, levelInterval, strokesWithoutSlips } from './level-effect.ts';
import { levelEffectOutcome } from './level-effect-outcome.ts';
import { defineMeasure, type Part } from './measure.ts';
import { notApplicable, notMeasurable } from './outcomes.ts';
import type { PlayedStroke } from './played-stroke.ts';
import { handScopes } from './scopes.ts';

/** Accents of every partial and hand against the other accents. */
export const accentMatch = defineMeasure(
  {
    id: 'accent-match',
    title: 'Accent furthest off',
    unit: 'dB',
    better: 'near-zero',
    describes:
      'How much louder (or, with a minus, softer) the accents of one partial and hand are than all other accents; for the whole take the largest distance. A microphone nearer to one hand is part of it.',
    formula:
      'mean level of the accents of one partial and hand − mean level of all other accents, dB. Whole take: the largest size',
    interval: `${levelInterval} For the largest, each range is first widened until all hold together (Bonferroni).`,
    reading:
      'Near zero: all accents weigh the same. The part furthest off names partial and hand to listen to; move the phone to the middle and record again before working on it.',
    limits: ['A microphone nearer to one hand is part of it.'],
    reasons: ['no-accents', 'too-few-strokes', 'one-kind-of-accent'],
    source:
      'Difference of mean levels by least squares, Newey & West 1987 by beats; Bonferroni for the largest.',
  },
  (performance) => {
    const { accents } = accentsAndTaps(performance.strokes);
    if (performance.asked.every((slot) => slot.grace || !slot.accent)) {
      return [{ scope: {}, outcome: notApplicable('no-accents') }];
    }
    const hands = handScopes(performance);
    const partials = [...new Set(accents.map((s) => s.slot.partial))].sort((a, b) => a - b);
    const kinds: Scope[] = partials.flatMap((partial): Scope[] =>
      hands.length === 0 ? [{ partial }] : hands.map((hand) => ({ partial, hand })),
    );
    const belongs = ({ partial, hand }: Scope, s: PlayedStroke) =>
      s.slot.partial === partial && (hand === undefined || s.hand === hand);
    const present = kinds.filter((kind) => accents.some((s) => belongs(kind, s)));
    if (present.length < 2) {
      const few = accents.length < fewestLevels;
      return [
        {
          scope: {},
          outcome: few
            ? notMeasurable('too-few-strokes', { strokes: accents.length, needed: fewestLevels })
            : notApplicable('one-kind-of-accent'),
        },
      ];
    }
    let degrees = Number.POSITIVE_INFINITY;
    const parts = present.map((scope): Part => {
      const own = accents.filter((s) => belongs(scope, s)).length;
      const term: LevelTerm = (s) => (belongs(scope, s) ? 1 : 0);
      const effect = levelEffect(accents, { term });
      const least = Math.min(own, accents.length - own);
      if (effect === null || least < fewestLevels) {
        const told = strokesWithoutSlips(accents, { term }).filter((s) => belongs(scope, s)).length;
        const few = { strokes: Math.min(least, told), needed: fewestLevels };
        return { scope, outcome: notMeasurable('too-few-strokes', few) };
      }
      degrees = Math.min(degrees, effect.degrees);
      return { scope, outcome: levelEffectOutcome(effect, accents, term) };
    });
    const outcomes = parts.map((part) => part.outcome);
    const whole = largestFigure(outcomes, { degrees, strokes: accents.length }) ?? outcomes[0]!;
    return [{ scope: {}, outcome: whole }, ...parts];
  },
);
