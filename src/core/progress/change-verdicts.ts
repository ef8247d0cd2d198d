import { holm } from '../stats/holm.ts';
import type { DayComparison } from './compare-days.ts';
import type { ComparedFigure } from './compared-figures.ts';

/**
 * `clearer`/`worse`: a change that holds against the scatter of days; `higher`/`lower`: the same for a figure of which
 * more is only different; `no-clear-change`; `too-few-days`: no verdict yet.
 */
export type Verdict = 'clearer' | 'worse' | 'higher' | 'lower' | 'no-clear-change' | 'too-few-days';

export interface JudgedChange extends DayComparison {
  readonly verdict: Verdict;
  /** After Holm's correction for all figures asked at once; null without a verdict. */
  readonly correctedP: number | null;
}

/** Chance of a false verdict in a family of them: common practice. */
const level = 0.05;

/**
 * Verdicts on several figures at once: the chance that any of them claims a change where nothing changed stays under
 * 5 % (Holm 1979 over those that have enough days).
 */
export function changeVerdicts(
  comparisons: readonly DayComparison[],
  figures: readonly ComparedFigure[],
): JudgedChange[] {
  const corrected = holm(comparisons.flatMap(({ p }) => (p === null ? [] : [p])));
  let next = 0;
  return comparisons.map((comparison) => {
    if (comparison.p === null) return { ...comparison, verdict: 'too-few-days', correctedP: null };
    const correctedP = corrected[next++]!;
    return {
      ...comparison,
      correctedP,
      verdict: correctedP < level ? direction(comparison, figures) : 'no-clear-change',
    };
  });
}

function direction({ figure, change }: DayComparison, figures: readonly ComparedFigure[]): Verdict {
  const { better, scale } = figures.find(({ id }) => id === figure)!;
  const up = change!.value > (scale === 'ratio' ? 1 : 0);
  if (better === 'either') return up ? 'higher' : 'lower';
  return up === (better === 'high') ? 'clearer' : 'worse';
}
