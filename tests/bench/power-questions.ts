import type { Scope } from '../../src/core/result/take-result.ts';
import { studentTCdf } from '../../src/core/stats/student-t-cdf.ts';
import { studentTQuantile } from '../../src/core/stats/student-t-quantile.ts';
import { players } from '../core/measures/simulated-performance.ts';
import { longRunSpread } from './long-run-spread.ts';
import { accentLevel, tapLevel } from './power-faults.ts';

export const levelSd = 1.5;

export type Figure = { readonly value: number; readonly low: number; readonly high: number };

/** Degrees of freedom of each interval's method: blocks of six strokes, beats of a hand, half the strokes. */
const habitDegrees = (strokes: number) => strokes / 6 - 1;
const beatDegrees = (strokes: number) => strokes / 3 - 1;
const halfOfThem = (strokes: number) => strokes / 2;
const large = () => 1e6;

export interface Question {
  readonly id: string;
  readonly scope: Scope;
  /** Value without a fault; a spread is judged by its logarithm. */
  readonly truth: (player: string) => number;
  readonly degrees: (strokes: number) => number;
}

const zero = () => 0;
/** Everything a take is asked at once. */
export const questions: readonly Question[] = [
  { id: 'hand-offset', scope: {}, truth: zero, degrees: habitDegrees },
  ...[1, 2, 3].map((partial) => ({
    id: 'placement',
    scope: { partial },
    truth: zero,
    degrees: habitDegrees,
  })),
  ...(['before', 'on', 'after'] as const).map((place) => ({
    id: 'accent-bend',
    scope: { place },
    truth: zero,
    degrees: habitDegrees,
  })),
  { id: 'tempo-error', scope: {}, truth: zero, degrees: halfOfThem },
  { id: 'tempo-change', scope: {}, truth: zero, degrees: halfOfThem },
  { id: 'hand-ratio-gap', scope: {}, truth: zero, degrees: beatDegrees },
  { id: 'accent-to-tap-ratio', scope: {}, truth: () => accentLevel - tapLevel, degrees: beatDegrees },
  { id: 'timing-spread', scope: {}, truth: (player) => longRun.get(player)!, degrees: large },
  { id: 'tap-spread', scope: {}, truth: () => levelSd, degrees: large },
  { id: 'accent-spread', scope: {}, truth: () => levelSd, degrees: large },
];
const longRun = new Map(Object.entries(players).map(([name, player]) => [name, longRunSpread(player)]));
/** Two-sided p of the truth, from the half of the interval that lies on its side. */
export function pOf(
  question: Question,
  { value, low, high }: Figure,
  player: string,
  strokes: number,
): number {
  const truth = question.truth(player);
  const by = truth > 0 && question.id.endsWith('spread') ? Math.log : (x: number) => x;
  const half = truth > value ? by(high) - by(value) : by(value) - by(low);
  const degrees = question.degrees(strokes);
  const t = (Math.abs(by(value) - by(truth)) / half) * studentTQuantile(0.975, degrees);
  return 2 * studentTCdf(-t, degrees);
}
