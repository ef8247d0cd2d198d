import { bartlettVariance } from '../stats/bartlett-variance.ts';
import { leastSquares } from '../stats/least-squares.ts';
import { madToSd } from '../stats/mad.ts';
import { median } from '../stats/median.ts';
import { studentTQuantile } from '../stats/student-t-quantile.ts';
import { squaredBartlettWeights, sumsByBeat } from './beat-of.ts';
import type { PlayedStroke } from './played-stroke.ts';

/** How the range of an effect on levels is found. */
export const levelInterval =
  "Newey & West standard error of pulls summed by beat, lag 1; Student's t of (beats − terms) / 1.5.";

/** One value a stroke. */
export type LevelTerm = (stroke: PlayedStroke) => number;

/** How much the level rises with a term, dB for each unit of it, with its 95 % interval. */
export interface LevelEffect {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Degrees of freedom of the interval. */
  readonly degrees: number;
}

/** Own share of a term's variance to be told apart: variance inflation of 10, common practice. */
const leastOwnShare = 0.1;
/** Strokes that the term's own part must rest on (our judgement). */
const leastEffective = 6;
/** A level this many robust standard deviations off is a slip, not the effect (our judgement). */
const slipAt = 4;
/** Under this nobody's levels are told from one another, dB (our judgement). */
const leastScatterDb = 0.1;

/** Left +½, right −½; a hand that is open counts for neither. */
export const handTerm: LevelTerm = ({ hand }) => (hand === null ? 0 : hand === 'L' ? 0.5 : -0.5);

/** One term for each partial of each division. */
export function partialTerms(strokes: readonly PlayedStroke[]): LevelTerm[] {
  const kinds = new Set(strokes.map(({ slot }) => `${slot.divisions} ${slot.partial}`));
  return [...kinds].map(
    (kind) =>
      ({ slot }) =>
        `${slot.divisions} ${slot.partial}` === kind ? 1 : 0,
  );
}

interface LevelTerms {
  readonly before?: readonly LevelTerm[];
  readonly term: LevelTerm;
  readonly behind?: readonly LevelTerm[];
}

function fitTo(strokes: readonly PlayedStroke[], { before = [], term, behind = [] }: LevelTerms) {
  const all: readonly LevelTerm[] = [() => 1, ...before, term, ...behind];
  const columns = all.map((one) => Float64Array.from(strokes, one));
  const scale = columns.map((column, k) => {
    const centre = k === 0 ? 0 : column.reduce((sum, v) => sum + v, 0) / column.length;
    return Math.max(
      column.reduce((sum, v) => sum + (v - centre) ** 2, 0),
      1e-9,
    );
  });
  const design = { columns, scale, minShare: leastOwnShare, minEffective: leastEffective };
  const levels = Float64Array.from(strokes, ({ levelDb }) => levelDb);
  return { columns, fit: leastSquares(design, levels) };
}

/** The fit to all strokes, and those whose level is no slip beside it. */
function fitToAll(strokes: readonly PlayedStroke[], terms: LevelTerms) {
  const fitted = fitTo(strokes, terms);
  const sizes = fitted.fit.residuals.map(Math.abs);
  const limit = slipAt * Math.max(leastScatterDb, madToSd * median(sizes));
  return { ...fitted, inside: strokes.filter((_, i) => sizes[i]! <= limit) };
}

/**
 * Strokes that an effect rests on: all but slips.
 *
 * @example strokesWithoutSlips(accents, { term }).length // 5 of 6
 */
export const strokesWithoutSlips = (strokes: readonly PlayedStroke[], terms: LevelTerms): PlayedStroke[] =>
  fitToAll(strokes, terms).inside;

/**
 * Level on a term by least squares, the terms `before` it taken out. Where those explain it the effect can't be told:
 * null. Terms `behind` it are taken out as far as they differ from it; where they are the same, the effect speaks for
 * both. Slips are left out. The strokes' pulls are summed by beat and beats next to each other may be alike (Newey &
 * West 1987, lag 1); Student's t of (beats less terms) / 1.5.
 *
 * @example levelEffect(taps, { before: [handTerm], term: ({ place }) => (place === 'after' ? 1 : 0) })?.value // dB
 */
export function levelEffect(strokes: readonly PlayedStroke[], terms: LevelTerms): LevelEffect | null {
  const at = (terms.before?.length ?? 0) + 1;
  const { inside, ...first } = fitToAll(strokes, terms);
  const { columns, fit } = inside.length === strokes.length ? first : fitTo(inside, terms);
  const row = fit.kept.indexOf(at);
  if (row < 0) return null;
  const sums = sumsByBeat(inside, (_, i) => {
    const pull = fit.kept.reduce((sum, kept, k) => sum + fit.inverse[row]![k]! * columns[kept]![i]!, 0);
    return pull * fit.residuals[i]!;
  });
  const free = sums.length - fit.kept.length;
  if (free < 2) return null;
  const degrees = free / squaredBartlettWeights;
  const spare = inside.length / (inside.length - fit.kept.length);
  const half = studentTQuantile(0.975, degrees) * Math.sqrt(bartlettVariance(sums, 1) * spare);
  const value = fit.coefficients[at]!;
  return { value, low: value - half, high: value + half, degrees };
}
