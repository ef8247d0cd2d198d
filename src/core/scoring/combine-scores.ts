import type { Score } from '../result/take-result.ts';
import { wordOfScore } from './score-curve.ts';

/** A score and what it counts. */
interface WeightedScore {
  readonly weight: number;
  readonly score: Score;
}

/**
 * Weighted mean; the interval's halves add in quadrature with the weights, as for independent measures. Not for an
 * empty list.
 */
export function meanScore(parts: readonly WeightedScore[]): Score {
  const total = parts.reduce((sum, p) => sum + p.weight, 0);
  const score = parts.reduce((sum, p) => sum + p.weight * p.score.score, 0) / total;
  const half = (end: 'low' | 'high') =>
    Math.hypot(...parts.map((p) => (p.weight / total) * (p.score[end] - p.score.score)));
  return bounded(score, score - half('low'), score + half('high'));
}

/** Weighted geometric mean, so that a strong dimension can't hide a weak one; the interval as above on logarithms. */
export function geometricMeanScore(parts: readonly WeightedScore[]): Score {
  const total = parts.reduce((sum, p) => sum + p.weight, 0);
  const floor = 0.1;
  const log = (value: number) => Math.log(Math.max(value, floor));
  const centre = parts.reduce((sum, p) => sum + p.weight * log(p.score.score), 0) / total;
  const half = (end: 'low' | 'high') =>
    Math.hypot(...parts.map((p) => (p.weight / total) * (log(p.score[end]) - log(p.score.score))));
  return bounded(Math.exp(centre), Math.exp(centre - half('low')), Math.exp(centre + half('high')));
}

const clamp = (value: number) => Math.min(100, Math.max(0, value));

function bounded(score: number, low: number, high: number): Score {
  return { score: clamp(score), low: clamp(low), high: clamp(high), word: wordOfScore(score) };
}
