import { median } from '../../src/core/stats/median.ts';
import { quantile } from '../../src/core/stats/quantile.ts';
import { agreement } from './match-events.ts';
import type { TakeScore } from './score-take.ts';

/** Several takes' scores as one. Times in ms, levels in dB; NaN where there is nothing to tell from. */
export interface PooledScore {
  readonly takes: number;
  readonly strokes: number;
  readonly f10: number;
  readonly f3: number;
  /** The lowest F ±10 ms of a single take. */
  readonly worstF10: number;
  readonly recall: number;
  readonly precision: number;
  readonly timeMedianMs: number;
  readonly timeP95Ms: number;
  /** Largest difference, over takes, between the median error of accents and that of the others. */
  readonly accentBiasMs: number;
  readonly levelMedianDb: number;
  readonly levelP95Db: number;
  /** Mean over takes of the error of the accent-to-tap ratio, and the largest. */
  readonly ratioBiasDb: number;
  readonly ratioWorstDb: number;
  /** Error over its own standard error: spread of the middle two thirds, and share beyond three. */
  readonly timeSpread: number;
  readonly timeBeyond3: number;
  readonly levelSpread: number;
  readonly levelBeyond3: number;
}

const fewest = 5;
const largest = (values: readonly number[]) =>
  values.reduce((most, value) => (Math.abs(value) > Math.abs(most) ? value : most), 0);
const quantileOf = (values: readonly number[], p: number) =>
  values.length > 0 ? quantile(values, p) : Number.NaN;

/** Pools scores; every stroke counts alike, biases are taken within each take. */
export function poolScores(scores: readonly TakeScore[]): PooledScore {
  const sum = (of: (score: TakeScore) => number) => scores.reduce((total, score) => total + of(score), 0);
  const strokes = sum((score) => score.strokes);
  const heard = sum((score) => score.heard);
  const within10 = sum((score) => score.within10Ms);
  const all = agreement(within10, strokes, heard);
  const errors = scores.flatMap((score) => score.errors);
  const times = errors.map((error) => Math.abs(error.time) * 1000);
  const levels = errors.flatMap((error) => (error.level === null ? [] : [Math.abs(error.level)]));
  const timeRatios = errors.flatMap(({ time, timeSe }) => (timeSe === null ? [] : [Math.abs(time / timeSe)]));
  const levelRatios = errors.flatMap(({ level, levelSe }) =>
    level === null || levelSe === null ? [] : [Math.abs(level / levelSe)],
  );
  const beyond3 = (ratios: readonly number[]) =>
    ratios.length > 0 ? ratios.filter((ratio) => ratio > 3).length / ratios.length : Number.NaN;
  const timeBiases = biases(scores, (error) => error.time * 1000);
  const levelBiases = biases(scores, (error) => error.level);
  return {
    takes: scores.length,
    strokes,
    f10: all.f,
    f3: agreement(
      sum((score) => score.within3Ms),
      strokes,
      heard,
    ).f,
    worstF10: Math.min(...scores.map((score) => agreement(score.within10Ms, score.strokes, score.heard).f)),
    recall: all.recall,
    precision: all.precision,
    timeMedianMs: quantileOf(times, 0.5),
    timeP95Ms: quantileOf(times, 0.95),
    accentBiasMs: timeBiases.length > 0 ? largest(timeBiases) : Number.NaN,
    levelMedianDb: quantileOf(levels, 0.5),
    levelP95Db: quantileOf(levels, 0.95),
    ratioBiasDb: levelBiases.reduce((total, bias) => total + bias, 0) / levelBiases.length,
    ratioWorstDb: levelBiases.length > 0 ? largest(levelBiases) : Number.NaN,
    timeSpread: quantileOf(timeRatios, 0.6827),
    timeBeyond3: beyond3(timeRatios),
    levelSpread: quantileOf(levelRatios, 0.6827),
    levelBeyond3: beyond3(levelRatios),
  };
}

/** In each take with enough of both: median of accents minus median of the others. */
function biases(
  scores: readonly TakeScore[],
  value: (error: TakeScore['errors'][number]) => number | null,
): number[] {
  return scores.flatMap(({ errors }) => {
    const of = (accent: boolean) =>
      errors.flatMap((error) => {
        const v = error.accent === accent ? value(error) : null;
        return v === null ? [] : [v];
      });
    const [accents, others] = [of(true), of(false)];
    return accents.length < fewest || others.length < fewest ? [] : [median(accents) - median(others)];
  });
}
