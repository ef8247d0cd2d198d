import { changeVerdicts, type JudgedChange } from './change-verdicts.ts';
import { compareDays } from './compare-days.ts';
import { comparedFigures } from './compared-figures.ts';
import { type Conditions, likeness } from './conditions.ts';
import type { ExercisePlay } from './exercise-progress.ts';

export interface PeriodsCompared {
  readonly changes: readonly JudgedChange[];
  /** What both sides are like: the newest playing's conditions. */
  readonly like: Conditions | null;
  /** Playings left out because their tempo or technique is another one. */
  readonly leftOut: number;
}

/**
 * The days before a day against those from it on, figure by figure, like playings only, with verdicts that hold for all
 * figures together.
 */
export function periodsCompared(plays: readonly ExercisePlay[], fromDay: string): PeriodsCompared {
  const newest = plays.at(-1)?.conditions ?? null;
  const like = plays.filter(({ conditions }) => likeness(conditions, newest!).timing);
  const comparisons = comparedFigures.map((figure) => {
    const values = like
      .filter(({ conditions }) => !figure.ofLevels || likeness(conditions, newest!).levels)
      .flatMap(({ day, figures }) => {
        const own = figures[figure.id];
        return own === undefined ? [] : [{ day, value: own.value }];
      });
    return compareDays(
      figure,
      values.filter(({ day }) => day < fromDay),
      values.filter(({ day }) => day >= fromDay),
    );
  });
  return {
    changes: changeVerdicts(comparisons, comparedFigures),
    like: newest,
    leftOut: plays.length - like.length,
  };
}
