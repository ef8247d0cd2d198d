import { type LinearFit, leastSquares } from '../stats/least-squares.ts';
import { designColumns } from './design-columns.ts';
import { halfWindow, type LocalLines, localLines } from './local-lines.ts';
import type { PlayedStroke } from './played-stroke.ts';
import { fewestTimed, findStrays } from './timing-strays.ts';

/** Timing of a take taken apart. Arrays hold one entry a played stroke, seconds throughout. */
export interface TimingModel {
  /** 1 where the stroke is part of the fit, 0 for strays and for strokes in stretches too short for a local tempo. */
  readonly judged: Uint8Array;
  readonly stretch: Int32Array;
  /** Beats from the start of the stretch. */
  readonly position: Float64Array;
  /** Onsets less the habits. */
  readonly withoutHabits: Float64Array;
  /** Onset against local tempo and habits; 0 where there is no local tempo. */
  readonly residual: Float64Array;
  /** Residuals brought to the variance of the stroke's own scatter. */
  readonly scaledResidual: Float64Array;
  /** What a unit of variance in each group of strokes adds to each squared residual (`LocalLines`). */
  readonly residualShares: LocalLines['residualShares'];
  /** Onset against the even place in the local tempo, habits included; null where there is no local tempo. */
  readonly deviation: readonly (number | null)[];
  /** Local seconds a beat; null where there is no local tempo. */
  readonly period: readonly (number | null)[];
  /** Indices of strokes too far off to belong to the player's habits and scatter. */
  readonly strays: readonly number[];
  /** Terms, and their columns with the local line taken out and 0 for strokes that aren't judged. */
  readonly columnIds: readonly string[];
  readonly columns: readonly Float64Array[];
  readonly fit: LinearFit;
  /** Number of judged strokes. */
  readonly count: number;
  /** Strokes in half a window: how far local fits make neighbours alike. */
  readonly memory: number;
}

/** Times that strays are looked for, each in what the earlier ones leave (our judgement). */
const strayPasses = 3;
/** Own share of a column's variance to be told apart: variance inflation of 10, common practice. */
const leastOwnShare = 0.1;
/** Strokes that a term's own part must rest on (our judgement). */
const leastEffective = 6;

function scaleOf(values: Float64Array, used: Uint8Array): number {
  let n = 0;
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < values.length; i++) {
    if (used[i] === 0) continue;
    n++;
    sum += values[i]!;
    squares += values[i]! ** 2;
  }
  // The second term drops a constant column, whose rounding errors have no scale of their own.
  return Math.max(squares - (sum * sum) / Math.max(1, n), 1e-6 * squares);
}

interface Pass {
  readonly lines: LocalLines;
  readonly judged: Uint8Array;
  readonly columns: readonly Float64Array[];
  readonly fit: LinearFit;
  readonly residual: Float64Array;
  readonly scaled: Float64Array;
}

/** Local lines out of onsets and columns alike, then least squares: the partial regression of Speckman 1988. */
function fitOnce(
  course: { readonly position: Float64Array; readonly stretch: Int32Array; readonly used: Uint8Array },
  time: Float64Array,
  raw: readonly Float64Array[],
): Pass {
  const lines = localLines(course);
  const judged = course.used.map((used, i) => used * lines.possible[i]!);
  const without = (column: Float64Array) => {
    const fit = lines.fit(column);
    return column.map((value, i) => (lines.possible[i] === 1 ? value - fit[i]! : 0));
  };
  const local = raw.map(without);
  const y = without(time);
  const masked = (column: Float64Array) => column.map((value, i) => (judged[i] === 1 ? value : 0));
  const columns = local.map(masked);
  const fit = leastSquares(
    {
      columns,
      scale: raw.map((column) => scaleOf(column, judged)),
      minShare: leastOwnShare,
      minEffective: leastEffective,
    },
    masked(y),
  );
  const residual = y.map((value, i) => local.reduce((r, x, k) => r - fit.coefficients[k]! * x[i]!, value));
  const scaled = residual.map((r, i) => r / Math.sqrt(Math.max(lines.residualVariance[i]!, 0.05)));
  return { lines, judged, columns, fit, residual, scaled };
}

/**
 * Takes onsets apart: onset = local tempo + place of the partial + hand + place by an accent + change of hands +
 * residual, all fitted together. Null with fewer than 24 strokes that have a local tempo.
 */
export function fitTimingModel(strokes: readonly PlayedStroke[]): TimingModel | null {
  if (strokes.length < fewestTimed) return null;
  const time = Float64Array.from(strokes, (s) => s.time);
  const position = Float64Array.from(strokes, (s) => s.position);
  const stretch = Int32Array.from(strokes, (s) => s.stretch);
  const design = designColumns(strokes);
  const raw = design.map((column) => column.values);
  const used = new Uint8Array(strokes.length).fill(1);
  let pass = fitOnce({ position, stretch, used }, time, raw);
  const countJudged = () => pass.judged.reduce((sum, one) => sum + one, 0);
  for (let k = 0; k < strayPasses && countJudged() >= fewestTimed; k++) {
    const strays = findStrays(pass, strokes);
    if (strays.length === 0) break;
    for (const i of strays) used[i] = 0;
    pass = fitOnce({ position, stretch, used }, time, raw);
  }
  const count = countJudged();
  if (count < fewestTimed) return null;
  const { lines, fit, residual, scaled, judged, columns } = pass;
  const habit = time.map((_, i) => raw.reduce((sum, x, k) => sum + fit.coefficients[k]! * x[i]!, 0));
  const centre = habit.reduce((sum, h, i) => sum + h * judged[i]!, 0) / count;
  const withoutHabits = time.map((t, i) => t - habit[i]!);
  const slope = lines.slope(withoutHabits);
  const meanDivisions = strokes.reduce((sum, s) => sum + s.slot.divisions, 0) / strokes.length;
  const where = <T>(value: (i: number) => T) =>
    Array.from(time, (_, i) => (lines.possible[i] === 1 ? value(i) : null));
  return {
    judged,
    stretch,
    position,
    withoutHabits,
    residual,
    scaledResidual: scaled,
    residualShares: lines.residualShares,
    deviation: where((i) => residual[i]! + habit[i]! - centre),
    period: where((i) => slope[i]!),
    strays: [...used.keys()].filter((i) => used[i] === 0),
    columnIds: design.map((column) => column.id),
    columns,
    fit,
    count,
    memory: Math.max(3, Math.round(halfWindow * meanDivisions)),
  };
}
