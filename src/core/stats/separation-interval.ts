import { solveIncreasing } from './solve-increasing.ts';
import type { Interval } from './wilson-interval.ts';

/**
 * Score-type interval for a Mann–Whitney probability `theta` from `m` against `n` values: the bounds solve
 * |θ̂ − θ| = z √V(θ), V(θ) = θ(1 − θ){1 + n*[(1 − θ)/(2 − θ) + θ/(1 + θ)]}/(mn), n* = (m + n)/2 − 1.
 * Never leaves 0 … 1 and doesn't collapse there. Newcombe 2006, Statistics in Medicine 25:559, method 5.
 *
 * @example separationInterval(1, 10, 10, 1.96).low // 0.8
 */
export function separationInterval(theta: number, m: number, n: number, quantile: number): Interval {
  if (!(m > 0 && n > 0)) throw new RangeError('one side is empty');
  const mid = (m + n) / 2 - 1;
  const sd = (t: number) =>
    Math.sqrt((t * (1 - t) * (1 + mid * ((1 - t) / (2 - t) + t / (1 + t)))) / (m * n));
  // sd vanishes at 0 and 1, where both equations have a second, empty solution.
  const edge = 1e-9;
  const low =
    theta > edge ? solveIncreasing((t) => t + quantile * sd(t) - theta, 0, Math.min(theta, 1 - edge)) : 0;
  const high =
    theta < 1 - edge ? solveIncreasing((t) => t - quantile * sd(t) - theta, Math.max(theta, edge), 1) : 1;
  return { low, high };
}
