import { changeVerdicts, type JudgedChange } from './change-verdicts.ts';
import { compareDays } from './compare-days.ts';
import { comparedFigures } from './compared-figures.ts';
import { type Conditions, likeness } from './conditions.ts';
import type { DatedValue } from './day-medians.ts';
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
  return exercisesCompared([plays], fromDay)[0]!;
}

/** The same for several exercises at once, each a list of playings: the verdicts hold for all of them together. */
export function exercisesCompared(
  exercises: readonly (readonly ExercisePlay[])[],
  fromDay: string,
): readonly PeriodsCompared[] {
  const compared = exercises.map((plays) => sidesOf(plays, fromDay));
  const changes = changeVerdicts(
    compared.flatMap(({ comparisons }) => comparisons),
    comparedFigures,
  );
  return compared.map(({ like, leftOut }, i) => {
    const own = changes.slice(i * comparedFigures.length, (i + 1) * comparedFigures.length);
    return { changes: own, like, leftOut };
  });
}

/** The changes that hold: verdicts that say more than "no clear change" or "too few days". */
export const realChanges = ({ changes }: PeriodsCompared): readonly JudgedChange[] =>
  changes.filter(({ verdict }) => verdict !== 'no-clear-change' && verdict !== 'too-few-days');

function sidesOf(plays: readonly ExercisePlay[], fromDay: string) {
  const newest = plays.at(-1)?.conditions ?? null;
  const like = plays
    .map((play) => ({ play, ...likeness(play.conditions, newest!) }))
    .filter(({ timing }) => timing);
  const comparisons = comparedFigures.map((figure) => {
    const before: DatedValue[] = [];
    const since: DatedValue[] = [];
    for (const { play, levels } of like) {
      const own = play.figures[figure.id];
      if (own === undefined || (figure.ofLevels && !levels)) continue;
      (play.day < fromDay ? before : since).push({ day: play.day, value: own.value });
    }
    return compareDays(figure, before, since);
  });
  return { comparisons, like: newest, leftOut: plays.length - like.length };
}
