import type { TakeResult } from '../result/take-result.ts';
import { pointsOfTake } from '../scoring/measure-points.ts';
import { nearlyScore } from '../scoring/score-curve.ts';
import { extent } from '../stats/extent.ts';
import { brokeFrom, repeatFigures } from './repeat-figures.ts';
import type { RepeatFigures } from './session-result.ts';

/** How a line went, repeat by repeat. */
export interface LineCourse {
  readonly line: number;
  readonly asked: number;
  /** Repeats that were reached, in order. */
  readonly repeats: readonly RepeatFigures[];
  /** First repeat, from 0, from which at least half of what follows is weak; null where the line held. */
  readonly brokeFrom: number | null;
  /** What made the weak repeats weak. */
  readonly causes: { readonly missed: number; readonly extra: number; readonly unevenShare: number | null };
}

/** A repeat's score is under "nearly there". */
export const isWeak = ({ score }: Pick<RepeatFigures, 'score'>): boolean =>
  score !== null && score < nearlyScore;

/**
 * Each line of a take by its repeats, marked as the take was, else by "steady": for each repeat the
 * strokes played, missed and too many, and how unevenly it was played, in per cent of a partial.
 *
 * @example lineCourses(result)[0].brokeFrom // null: the first line held
 */
export function lineCourses(result: TakeResult): LineCourse[] {
  const points = pointsOfTake(result);
  return result.sheet.lines.map(({ repeats: asked }, line) => {
    const repeats = repeatFigures(onlyLine(result, line), points);
    const weak = repeats.filter(isWeak);
    const sum = (of: (figures: RepeatFigures) => number) => weak.reduce((total, one) => total + of(one), 0);
    const shares = weak.flatMap(({ unevenShare }) => (unevenShare === null ? [] : [unevenShare]));
    const unevenShare = shares.length === 0 ? null : extent(shares).most;
    const causes = { missed: sum(({ missed }) => missed), extra: sum(({ extra }) => extra), unevenShare };
    return { line, asked, repeats, brokeFrom: brokeFrom(repeats), causes };
  });
}

/** The result with the slots and the graded run of one line. */
function onlyLine(result: TakeResult, line: number): TakeResult {
  const { slots, segments } = result;
  const own = slots.line.flatMap((of, i) => (of === line ? [i] : []));
  const column = <T>(values: readonly T[]) => own.map((i) => values[i]!);
  const graded = segments.filter(
    ({ state, firstSlot, lastSlot }) =>
      state === 'graded' && own.some((slot) => slot >= firstSlot && slot <= lastSlot),
  );
  return {
    ...result,
    slots: {
      line: column(slots.line),
      repeat: column(slots.repeat),
      bar: column(slots.bar),
      beat: column(slots.beat),
      partial: column(slots.partial),
      divisions: column(slots.divisions),
      hand: column(slots.hand),
      accent: column(slots.accent),
      grace: column(slots.grace),
      buzz: column(slots.buzz),
      position: column(slots.position),
      stroke: column(slots.stroke),
      state: column(slots.state),
    },
    segments: graded,
  };
}
