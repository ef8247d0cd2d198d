import { solveIncreasing } from '../stats/solve-increasing.ts';
import { studentTCdf } from '../stats/student-t-cdf.ts';

/** How the range of a regression with wander is found. */
export const tempoInterval =
  "Kalman filters of many models of the wander, each with Student's t, weighted by how well they fit; the middle 95 % of the mixture.";

/** How onsets lag behind their regression: a memory that fades by `memory` a stroke (1: a random walk) plus noise. */
export interface WanderModel {
  readonly memory: number;
  /** Variance of the memory's innovations over that of the noise. */
  readonly ratio: number;
}

/** A player who follows a click corrects deviations sooner or later. */
export const correctingModels: readonly WanderModel[] = [0, 0.3, 0.5, 0.65, 0.78, 0.87, 0.93, 0.97].flatMap(
  (memory) => [0.03, 0.1, 0.3, 1, 3, 10].map((ratio) => ({ memory, ratio })),
);

/** A player who keeps time alone never does: deviations add up. */
export const freeModels: readonly WanderModel[] = [0.01, 0.03, 0.1, 0.3, 1, 3, 10, 30, 100].map((ratio) => ({
  memory: 1,
  ratio,
}));

export interface TempoSeries {
  /** What is explained, and the columns that explain it; a level for each stretch is fitted besides. */
  readonly y: Float64Array;
  readonly columns: readonly Float64Array[];
  /** Nothing but the columns: no level for each stretch. Only with models whose memory fades. */
  readonly withoutLevels?: boolean;
  readonly stretch: Int32Array;
  /** Place in strokes, counted through missed ones. */
  readonly place: Float64Array;
}

/** Belief about one coefficient: Student's t round each model's estimate, weighted by how well the model fits. */
export interface Mixture {
  readonly mean: number;
  readonly quantile: (p: number) => number;
  /** The models with the weight that each has in the belief, the least likely left out. */
  readonly models: readonly { readonly model: WanderModel; readonly weight: number }[];
}

type Gram = Float64Array[];

const squareOf = (size: number): Gram => Array.from({ length: size }, () => new Float64Array(size));

/** Takes row and column `k` out of a cross-product matrix; returns its pivot. */
function sweep(gram: Gram, k: number): number {
  const pivot = gram[k]![k]!;
  if (!(pivot > 0)) return 0;
  for (let i = 0; i < gram.length; i++) {
    if (i === k) continue;
    const factor = gram[i]![k]! / pivot;
    for (let j = 0; j < gram.length; j++) if (j !== k) gram[i]![j]! -= factor * gram[k]![j]!;
  }
  return pivot;
}

/**
 * Filters all series of one stretch alike and adds the innovations' cross-products, less their common level, to
 * `total`. Series are [1, columns…, y]. Returns the log determinant's part.
 */
function filterStretch(
  model: WanderModel,
  series: readonly Float64Array[],
  place: Float64Array,
  from: number,
  to: number,
  total: Gram,
  withoutLevels: boolean,
): number {
  const size = series.length;
  const gram = squareOf(size);
  const state = new Float64Array(size);
  const innovation = new Float64Array(size);
  const { memory, ratio } = model;
  const free = memory === 1;
  const stationary = free ? 0 : ratio / (1 - memory * memory);
  let variance = stationary;
  let logDeterminant = 0;
  for (let i = from; i < to; i++) {
    let fade = 1;
    if (i > from) {
      const steps = place[i]! - place[i - 1]!;
      fade = free ? 1 : memory ** steps;
      variance = fade * fade * variance + (free ? ratio * steps : stationary * (1 - fade * fade));
    }
    const total1 = variance + 1;
    const gain = variance / total1;
    const root = 1 / Math.sqrt(total1);
    logDeterminant += Math.log(total1);
    for (let c = 0; c < size; c++) {
      const predicted = fade * state[c]!;
      const miss = series[c]![i]! - predicted;
      state[c] = predicted + gain * miss;
      innovation[c] = miss * root;
    }
    variance *= 1 - gain;
    for (let a = 0; a < size; a++)
      for (let b = a; b < size; b++) gram[a]![b]! += innovation[a]! * innovation[b]!;
  }
  for (let a = 0; a < size; a++) for (let b = 0; b < a; b++) gram[a]![b] = gram[b]![a]!;
  if (!withoutLevels) logDeterminant += Math.log(sweep(gram, 0));
  for (let a = 1; a < size; a++) for (let b = 1; b < size; b++) total[a - 1]![b - 1]! += gram[a]![b]!;
  return logDeterminant;
}

/** Fewest degrees of freedom of a lasting memory; from simulations of players who correct slowly. */
const fewestDegrees = 6;

/**
 * A memory that fades slowly leaves few pieces that are apart, so that its own size is hardly known; for a random walk
 * the steps are apart.
 */
const degreesUnder = ({ memory }: WanderModel, degrees: number): number =>
  memory === 1 ? degrees : Math.min(degrees, Math.max(fewestDegrees, 2 * degrees * (1 - memory)));

/**
 * Last column's coefficient by restricted maximum likelihood (Patterson & Thompson 1971) under each model, through a
 * Kalman filter (Harvey 1989), averaged over the models with weights likelihood^1.5, which keeps a sharp model from
 * being drowned by the many. Student's t of `degrees`, or fewer where the memory lasts. Null when there are too few
 * values.
 */
export function fitTempo(
  series: TempoSeries,
  models: readonly WanderModel[],
  degrees: number,
): Mixture | null {
  const { y, columns, stretch, place, withoutLevels = false } = series;
  const n = y.length;
  const all = [new Float64Array(n).fill(1), ...columns, y];
  const bounds: number[] = [];
  for (let i = 0; i < n; i++) if (i === 0 || stretch[i] !== stretch[i - 1]) bounds.push(i);
  bounds.push(n);
  const free = n - (withoutLevels ? 0 : bounds.length - 1) - columns.length;
  if (free < 3) return null;
  const parts = models.flatMap((model) => {
    const total = squareOf(all.length - 1);
    let logDeterminant = 0;
    for (let s = 0; s + 1 < bounds.length; s++) {
      logDeterminant += filterStretch(model, all, place, bounds[s]!, bounds[s + 1]!, total, withoutLevels);
    }
    for (let c = 0; c + 1 < columns.length; c++) logDeterminant += Math.log(sweep(total, c));
    const last = columns.length - 1;
    const own = total[last]![last]!;
    // Nothing to tell a tempo by, as when every stretch holds a single stroke.
    if (!(own > 0) || !Number.isFinite(logDeterminant)) return [];
    const value = total[last]![last + 1]! / own;
    logDeterminant += Math.log(sweep(total, last));
    const squares = Math.max(total[last + 1]![last + 1]!, Number.MIN_VALUE);
    return [
      {
        model,
        value,
        standardError: Math.sqrt(squares / free / own),
        degrees: degreesUnder(model, degrees),
        logLikelihood: -0.5 * (logDeterminant + free * Math.log(squares)),
      },
    ];
  });
  if (parts.length === 0) return null;
  const best = Math.max(...parts.map((part) => part.logLikelihood));
  const weights = parts.map((part) => Math.exp(1.5 * (part.logLikelihood - best)));
  const sum = weights.reduce((a, b) => a + b, 0);
  const kept = parts
    .map((part, k) => ({ ...part, weight: weights[k]! / sum }))
    .filter((part) => part.weight > 1e-4);
  const below = (x: number) =>
    kept.reduce(
      (p, { value, standardError, weight, degrees }) =>
        p +
        weight * (standardError > 0 ? studentTCdf((x - value) / standardError, degrees) : x < value ? 0 : 1),
      0,
    );
  const lowest = Math.min(...kept.map((part) => part.value - 50 * part.standardError));
  const highest = Math.max(...kept.map((part) => part.value + 50 * part.standardError));
  return {
    mean: parts.reduce((m, part, k) => m + (part.value * weights[k]!) / sum, 0),
    models: kept.map(({ model, weight }) => ({ model, weight })),
    quantile: (p) => solveIncreasing((x) => below(x) - p, lowest, highest),
  };
}
