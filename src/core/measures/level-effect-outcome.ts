import type { Outcome } from '../result/take-result.ts';
import type { LevelEffect, LevelTerm } from './level-effect.ts';
import { measured } from './outcomes.ts';
import type { PlayedStroke } from './played-stroke.ts';
import { worstStrokes } from './worst-strokes.ts';

/** Outcome of an effect on levels; where it is clear, pointing at the strokes that show it most. */
export function levelEffectOutcome(
  { value, low, high }: LevelEffect,
  strokes: readonly PlayedStroke[],
  term: LevelTerm,
): Outcome {
  const centre = strokes.reduce((sum, s) => sum + s.levelDb, 0) / strokes.length;
  const middle = strokes.reduce((sum, s) => sum + term(s), 0) / strokes.length;
  const pointsAt =
    low * high > 0
      ? worstStrokes(strokes, (s) =>
          term(s) > middle ? Math.sign(value) * (s.levelDb - centre) : Number.NEGATIVE_INFINITY,
        )
      : [];
  return measured({ value, low, high, strokes: strokes.length, pointsAt });
}
