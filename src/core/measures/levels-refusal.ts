import type { Outcome } from '../result/take-result.ts';
import { fewestLevels } from './level-classes.ts';
import { notApplicable, notMeasurable } from './outcomes.ts';

/** Why a figure that needs both accents and taps can't be given, or null; `written` says what the sheet asks for. */
export function levelsRefusal(
  counts: { readonly accents: number; readonly taps: number },
  written: { readonly accents: number; readonly taps: number },
): Outcome | null {
  if (written.accents === 0) return notApplicable('no-accents');
  if (written.taps === 0) return notApplicable('no-taps');
  const least = Math.min(counts.accents, counts.taps);
  return least < fewestLevels
    ? notMeasurable('too-few-accents-or-taps', { ...counts, needed: fewestLevels })
    : null;
}
