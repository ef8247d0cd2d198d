import type { Outcome } from '../result/take-result.ts';
import { measured } from './outcomes.ts';

/**
 * The largest of several signed figures, whatever its direction, as a size with an interval: no smaller than the
 * largest distance from zero that any interval leaves, no larger than the largest that any allows. Null when none
 * was measured.
 */
export function largestOf(outcomes: readonly Outcome[], strokes: number): Outcome | null {
  const figures = outcomes.filter((outcome) => outcome.state === 'measured');
  const first = figures[0];
  if (!first) return null;
  const worst = figures.reduce((a, b) => (Math.abs(b.value) > Math.abs(a.value) ? b : a), first);
  return measured({
    value: Math.abs(worst.value),
    low: Math.max(...figures.map(({ low, high }) => Math.max(0, low, -high))),
    high: Math.max(...figures.map(({ low, high }) => Math.max(-low, high))),
    strokes,
    pointsAt: worst.pointsAt,
  });
}
