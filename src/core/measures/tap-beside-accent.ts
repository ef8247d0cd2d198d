import type { Outcome } from '../result/take-result.ts';
import { accentsAndTaps, fewestLevels } from './level-classes.ts';
import { handTerm, type LevelTerm, levelEffect, partialTerms } from './level-effect.ts';
import { levelEffectOutcome } from './level-effect-outcome.ts';
import { notApplicable, notMeasurable } from './outcomes.ts';
import type { Performance } from './performance.ts';
import type { PlayedStroke } from './played-stroke.ts';

/**
 * Taps of one kind whose levels are this much less certain, dB, than the others' lie in the accent's echo, which passes
 * for part of them. Our judgement: in simulated rooms even taps read under 0.3 dB below it, 1.5 dB above it.
 */
const mostEchoDb = 0.6;

/** Mean squared standard error of levels, dB². */
const errorOf = (own: readonly PlayedStroke[]) =>
  own.reduce((sum, s) => sum + s.levelSe ** 2, 0) / own.length;

/** Reasons that `tapBesideAccent` gives. */
export const besideAccentReasons = [
  'no-accents',
  'no-taps',
  'no-such-place',
  'no-other-taps',
  'too-few-strokes',
  'accent-still-sounding',
  'place-goes-with-hand',
] as const;

/**
 * Level of taps at a place by an accent less the level of all other taps, hands taken out, and partials where taps of
 * one partial stand at several places. Needs six taps of either kind.
 */
export function tapBesideAccent({ asked, strokes }: Performance, place: 'before' | 'after'): Outcome {
  const main = asked.filter((slot) => !slot.grace);
  if (main.every((slot) => !slot.accent)) return notApplicable('no-accents');
  if (main.every((slot) => slot.accent)) return notApplicable('no-taps');
  const { taps } = accentsAndTaps(strokes);
  const beside = taps.filter((s) => s.place === place).length;
  const others = taps.length - beside;
  if (beside === 0) return notApplicable('no-such-place');
  if (others === 0) return notApplicable('no-other-taps');
  if (Math.min(beside, others) < fewestLevels) {
    return notMeasurable('too-few-strokes', { strokes: Math.min(beside, others), needed: fewestLevels });
  }
  const isBeside = (s: PlayedStroke) => s.place === place;
  const [there, elsewhere] = [taps.filter(isBeside), taps.filter((s) => !isBeside(s))];
  const echo = Math.sqrt(Math.abs(errorOf(there) - errorOf(elsewhere)));
  if (echo > mostEchoDb) return notMeasurable('accent-still-sounding', { echoDb: echo });
  const term: LevelTerm = (s) => (s.place === place ? 1 : 0);
  const effect = levelEffect(taps, { before: [handTerm], term, behind: partialTerms(taps) });
  return effect === null ? notApplicable('place-goes-with-hand') : levelEffectOutcome(effect, taps, term);
}
