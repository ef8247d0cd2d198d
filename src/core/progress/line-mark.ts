import { steady } from '../scoring/rubrics/steady.ts';
import { distanceFromPerfect, scoreOfValue } from '../scoring/score-curve.ts';

/** A figure of one playing of a line with its 95 % interval. */
export interface LineFigure {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** What a figure of a line is worth, 0 to 100, with its 95 % interval. */
export interface LineMark {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** What lines are held against each other by: one figure of each thing that is graded in a line. */
export const weighedFigures = [
  { id: 'timing-spread-share', ofLevels: false },
  { id: 'accent-to-tap-ratio', ofLevels: true },
  { id: 'tap-spread', ofLevels: true },
  { id: 'hand-offset-share', ofLevels: false },
] as const;

const criteria = steady.dimensions.flatMap((dimension) => dimension.criteria);

/**
 * A figure as the steady rubric scores it. Lines are held against each other, so another rubric's points would order
 * them the same way within a figure.
 *
 * @example lineMark('timing-spread-share', { value: 5, low: 4, high: 6.5 }).value // 85
 */
export function lineMark(measure: string, figure: LineFigure): LineMark {
  const { score, low, high } = scoreOfValue(figure, criterionOf(measure));
  return { value: score, low, high };
}

/** How far a figure lies from perfect, in its own unit, with its interval; and a distance too small to matter. */
export function lineDistance(
  measure: string,
  { value, low, high }: LineFigure,
): LineMark & { readonly small: number } {
  const { perfect, secure } = criterionOf(measure);
  const [from, to] = typeof perfect === 'number' ? [perfect, perfect] : [perfect.min, perfect.max];
  const [atLow, atHigh] = [distanceFromPerfect(low, perfect), distanceFromPerfect(high, perfect)];
  return {
    value: distanceFromPerfect(value, perfect),
    low: low <= to && high >= from ? 0 : Math.min(atLow, atHigh),
    high: Math.max(atLow, atHigh),
    small: secure / 20,
  };
}

function criterionOf(measure: string) {
  const criterion = criteria.find((one) => one.measure === measure);
  if (criterion === undefined) throw new RangeError(`No criterion scores "${measure}".`);
  return criterion;
}
