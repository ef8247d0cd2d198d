import type { Outcome } from '../result/take-result.ts';
import { notApplicable, notMeasurable } from './outcomes.ts';
import type { Performance } from './performance.ts';

/** Why a figure that compares the hands can't be given, or null when the hands are told and both play. */
export function handsRefusal({ strokes, asked, hands }: Performance): Outcome | null {
  const written = new Set(asked.filter((slot) => !slot.grace).map((slot) => slot.hand));
  if (written.size < 2) return notApplicable('one-hand-only');
  if (hands === 'not-told') return notMeasurable('hands-not-told');
  const told = new Set(strokes.flatMap((s) => (s.hand === null ? [] : [s.hand])));
  return told.size < 2 ? notMeasurable('hands-not-told') : null;
}
