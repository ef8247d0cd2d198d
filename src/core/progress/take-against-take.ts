import type { TakeResult } from '../result/take-result.ts';
import { type ComparedFigure, comparedFigures, type TakeFigure, takeFigure } from './compared-figures.ts';
import { type Conditions, type Likeness, likeness } from './conditions.ts';

export interface FigureDifference {
  readonly figure: ComparedFigure;
  readonly first: TakeFigure | null;
  readonly second: TakeFigure | null;
  /** Second less first, in the figure's unit; null where a side wasn't measured or the conditions forbid it. */
  readonly difference: number | null;
  readonly withheld: 'not-measured' | 'other-timing' | 'other-levels' | null;
}

/** One take against another: what differs is shown, without a verdict, since one take is one day's form. */
export interface TakeDifference {
  readonly likeness: Likeness;
  readonly figures: readonly FigureDifference[];
}

interface Played {
  readonly result: TakeResult;
  readonly conditions: Conditions;
}

/**
 * Two takes figure by figure. A figure of levels is withheld where pad, sticks or device differ or weren't noted, every
 * figure where exercise, tempo or technique do.
 */
export function takeAgainstTake(first: Played, second: Played): TakeDifference {
  const like = likeness(first.conditions, second.conditions);
  const figures = comparedFigures.map((figure): FigureDifference => {
    const [a, b] = [takeFigure(first.result, figure), takeFigure(second.result, figure)];
    const withheld = !like.timing
      ? 'other-timing'
      : figure.ofLevels && !like.levels
        ? 'other-levels'
        : a === null || b === null
          ? 'not-measured'
          : null;
    const difference = withheld === null ? b!.value - a!.value : null;
    return { figure, first: a, second: b, difference, withheld };
  });
  return { likeness: like, figures };
}
