import { measured, notApplicable, notMeasurable } from '../measures/outcomes.ts';
import type { Finding } from '../recording-check/heard-recording.ts';
import { refuseSpoiled } from '../recording-check/refuse-spoiled.ts';
import type { Outcome, TakeResult } from '../result/take-result.ts';
import { studentTQuantile } from '../stats/student-t-quantile.ts';
import {
  type Habit,
  type LinePattern,
  linePattern,
  type PatternStroke,
  type PooledScatter,
} from './line-pattern.ts';
import { fewestSpare, type PlayedModel } from './played-model.ts';

export type ModelComparison = NonNullable<TakeResult['model']>;
type Difference = ModelComparison['measures'][number];

/**
 * What one difference is judged by at least, however little the model scatters: 2.5 % of the interval is just audible
 * (Friberg & Sundberg 1995), and so is about 1 dB (quoted from memory).
 */
export const leastBand = { placement: 2.5, level: 1 } as const;

/** Lines of a sheet that a model has, by their place in the sheet. */
export function linesInModel(lines: readonly { readonly notation: string }[], model: PlayedModel): number[] {
  return [...lines.keys()].filter((i) => model.lines.some(({ notation }) => notation === lines[i]!.notation));
}

/** Variance of a mean of habits and its part of the degrees of freedom. */
function varianceOf(habits: readonly Habit[], { sd }: PooledScatter, besides = 0): number {
  const sum = habits.reduce((total, { strokes }) => total + 1 / strokes.length, 0);
  return (sd * sd * sum) / habits.length ** 2 + besides ** 2;
}

/**
 * Mean difference of two rows of habits of the same written strokes, with a 95 % interval after Welch 1947 (degrees of
 * freedom by Satterthwaite); `besides` are standard errors that all of a row share.
 */
function differenceOf(
  pairs: readonly { readonly own: Habit; readonly other: Habit }[],
  own: PooledScatter,
  other: PooledScatter,
  besides: readonly [number, number] = [0, 0],
): { readonly value: number; readonly low: number; readonly high: number } {
  const value = pairs.reduce((sum, pair) => sum + pair.own.mean - pair.other.mean, 0) / pairs.length;
  const a = varianceOf(
    pairs.map((pair) => pair.own),
    own,
    besides[0],
  );
  const b = varianceOf(
    pairs.map((pair) => pair.other),
    other,
    besides[1],
  );
  const total = a + b;
  const degrees = total > 0 ? total ** 2 / (a ** 2 / own.degrees + b ** 2 / other.degrees) : own.degrees;
  const half = studentTQuantile(0.975, degrees) * Math.sqrt(total);
  return { value, low: value - half, high: value + half };
}

/** Where a difference lies against the band round the model. */
export function standingOf(outcome: Outcome, band: number): Difference['standing'] {
  if (outcome.state !== 'measured') return 'not-told';
  if (outcome.low > band) return 'above';
  if (outcome.high < -band) return 'below';
  return outcome.low >= -band && outcome.high <= band ? 'alike' : 'not-told';
}

function compareLine(own: LinePattern, other: LinePattern, line: number): Difference[] {
  const partner = (stroke: PatternStroke) =>
    other.strokes.find(({ beat, partial }) => beat === stroke.beat && partial === stroke.partial);
  const pairsOf = (what: 'placement' | 'level', strokes: readonly PatternStroke[]) =>
    strokes.flatMap((stroke) => {
      const there = partner(stroke)?.[what] ?? null;
      const here = stroke[what];
      return here && there ? [{ own: here, other: there }] : [];
    });
  const groups = [...new Set(own.strokes.map(({ partial, accent }) => `${partial} ${accent}`))].sort();
  const everywhere = pairsOf('placement', own.strokes);
  // Places count against the mean of the line, as nothing is said about a click.
  const centre =
    everywhere.reduce((sum, pair) => sum + pair.own.mean - pair.other.mean, 0) / everywhere.length;
  return (['placement', 'level'] as const).flatMap((what) =>
    groups.map((group): Difference => {
      const strokes = own.strokes.filter(({ partial, accent }) => `${partial} ${accent}` === group);
      const { partial, accent } = strokes[0]!;
      const scatterOf = (pattern: LinePattern) =>
        what === 'placement' ? pattern.placementScatter : accent ? pattern.accentScatter : pattern.tapScatter;
      const [here, there] = [scatterOf(own), scatterOf(other)];
      const band = Math.max(leastBand[what], there.sd);
      const pairs = pairsOf(what, strokes);
      const outcome = ((): Outcome => {
        if (what === 'level' && own.strokes.every((stroke) => stroke.accent)) return notApplicable('no-taps');
        const spare = Math.min(here.degrees, there.degrees, own.placementScatter.degrees);
        const needed = what === 'placement' ? fewestSpare : fewestSpare / 3;
        if (spare < needed || pairs.length === 0) return notMeasurable('too-few-repeats-for-model');
        // Taps move with their own median: its error is in theirs already.
        const besides =
          what === 'level' && accent ? ([own.medianTapSe, other.medianTapSe] as const) : undefined;
        const { value, low, high } = differenceOf(pairs, here, there, besides);
        const shift = what === 'placement' ? centre : 0;
        return measured({
          value: value - shift,
          low: low - shift,
          high: high - shift,
          strokes: pairs.reduce((sum, pair) => sum + pair.own.strokes.length, 0),
        });
      })();
      const unit = what === 'placement' ? '%' : 'dB';
      const scope = { line, partial, accent };
      return { id: `model-${what}`, unit, scope, outcome, band, standing: standingOf(outcome, band) };
    }),
  );
}

/**
 * Holds a graded take against a model of the same line or lines: for each partial, accents and taps apart, how much
 * later (% of a partial) and how much louder (dB against the median tap) it is than the model, with a 95 % interval,
 * the band of the model's own scatter from stroke to stroke, and where the interval lies against that band. Tempo and
 * loudness of the recordings may differ. Lines that the model lacks are counted, null where it has none of them.
 *
 * @example compareToModel(result, model)?.measures[0]
 * // { id: 'model-placement', unit: '%', scope: { line: 0, partial: 1, accent: true }, outcome, band: 3.1,
 * //   standing: 'alike' }
 */
export function compareToModel(result: TakeResult, model: PlayedModel): ModelComparison | null {
  const { lines } = result.sheet;
  const common = linesInModel(lines, model);
  if (common.length === 0 || result.grading.state !== 'graded') return null;
  return {
    name: model.name,
    linesLeftOut: lines.length - common.length,
    measures: common.flatMap((line) => {
      const other = model.lines.find(({ notation }) => notation === lines[line]!.notation)!;
      return compareLine(linePattern(result, line), other, line);
    }),
  };
}

/** The comparison with what findings of the recording spoil not told. */
export function withoutSpoilt(
  comparison: ModelComparison | null,
  findings: readonly Finding[],
): ModelComparison | null {
  if (comparison === null) return null;
  const measures = refuseSpoiled(comparison.measures, findings).map(
    (one): Difference => (one.outcome.state === 'measured' ? one : { ...one, standing: 'not-told' }),
  );
  return { ...comparison, measures };
}
