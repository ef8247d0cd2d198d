import type { DayCourse } from '../../charts/weeks/day-course.ts';
import { type ComparedFigure, comparedFigures } from '../../core/progress/compared-figures.ts';
import { likeness } from '../../core/progress/conditions.ts';
import { dayMedians } from '../../core/progress/day-medians.ts';
import { dayNumber } from '../../core/progress/day-number.ts';
import type { ExercisePlay } from '../../core/progress/exercise-progress.ts';
import { conditionList } from '../../core/progress/progress-words.ts';
import { measureName } from '../../core/result/names.ts';

/** Figures that have a picture of their own; the rest stand in the table. */
const pictured: Readonly<Record<string, string>> = {
  'timing-spread': 'Do the strokes scatter less from week to week?',
  'accent-bend-share': 'Does the rhythm bend less round the accent?',
  'accent-to-tap-ratio': 'Do accents stand clear of taps?',
  'tap-spread': 'Are the taps more alike?',
};
const fewestTakes = 3;

/**
 * A picture over days for each figure that has one and was measured in three takes. `id` makes the pictures' ids of one
 * page different; `trendOf` tells the trend in words; `mark` puts an upright before a day.
 */
export function dayCourses(
  plays: readonly ExercisePlay[],
  {
    id,
    trendOf,
    mark,
  }: {
    readonly id: string;
    readonly trendOf: (figure: string) => string;
    readonly mark?: { readonly day: string; readonly what: string };
  },
): readonly DayCourse[] {
  const newest = plays.at(-1);
  if (newest === undefined) return [];
  return comparedFigures.flatMap((figure) => {
    const question = pictured[figure.id];
    const measured = plays.filter(({ figures }) => figures[figure.id] !== undefined);
    if (question === undefined || measured.length < fewestTakes) return [];
    return [
      {
        kind: 'day-course' as const,
        id: `${id}-${figure.id}`,
        question,
        up: `${measureName(figure.id).toLowerCase()}, ${figure.unit}`,
        unit: figure.unit,
        ...course(figure, measured, plays, newest),
        breaks: [
          ...breaks(figure, measured),
          ...(mark === undefined ? [] : [{ at: dayNumber(mark.day), day: mark.day, what: mark.what }]),
        ],
        trend: trendOf(figure.id),
      },
    ];
  });
}

function course(
  figure: ComparedFigure,
  measured: readonly ExercisePlay[],
  plays: readonly ExercisePlay[],
  newest: ExercisePlay,
): Pick<DayCourse, 'takes' | 'days'> {
  const takes = measured.map((play) => {
    const ofDay = plays.filter(({ day }) => day === play.day);
    const like = likeness(play.conditions, newest.conditions);
    return {
      at: dayNumber(play.day),
      day: play.day,
      value: play.figures[figure.id]!.value,
      of:
        ofDay.length === 1
          ? 'the only take that day'
          : `take ${ofDay.indexOf(play) + 1} of ${ofDay.length} that day`,
      counts: figure.ofLevels ? like.levels : like.timing,
    };
  });
  const days = dayMedians(takes.filter(({ counts }) => counts)).map(({ day, median }) => ({
    at: dayNumber(day),
    day,
    median,
  }));
  return { takes, days };
}

/** What levels depend on besides the strokes. */
const setUp: readonly string[] = ['pad', 'sticks', 'device'];

/** Where what was noted changes from one take to the next: what a figure of levels or of timing depends on. */
function breaks(figure: ComparedFigure, plays: readonly ExercisePlay[]): DayCourse['breaks'] {
  return plays.flatMap((play, i) => {
    const before = plays[i - 1];
    if (before === undefined) return [];
    const { differ } = likeness(before.conditions, play.conditions);
    const asked = differ.filter((name) => name === 'technique' || (figure.ofLevels && setUp.includes(name)));
    if (asked.length === 0) return [];
    return [{ at: dayNumber(play.day), day: play.day, what: `other ${conditionList(asked)}` }];
  });
}
