import type { PlayedStroke } from './played-stroke.ts';

/** Strokes of a kind below which their levels aren't compared (our judgement: two bars of one accent a beat). */
export const fewestLevels = 6;

/** Accents and taps of a list of strokes. */
export function accentsAndTaps(strokes: readonly PlayedStroke[]): {
  readonly accents: readonly PlayedStroke[];
  readonly taps: readonly PlayedStroke[];
} {
  return { accents: strokes.filter((s) => s.slot.accent), taps: strokes.filter((s) => !s.slot.accent) };
}

export const levelsOf = (strokes: readonly PlayedStroke[]): Float64Array =>
  Float64Array.from(strokes, (s) => s.levelDb);
