import type { Outcome } from '../result/take-result.ts';
import { studentTQuantile } from '../stats/student-t-quantile.ts';
import { habitDegrees } from './habit-contrast.ts';
import { measured } from './outcomes.ts';
import type { TimingModel } from './timing-model.ts';

/**
 * The largest of several habits, whatever its direction, as a size. Picking the largest of k favours chance, so the
 * habits' intervals are first widened until all k hold together (Bonferroni: 0.05/k each); the size is then no smaller
 * than the largest distance from zero that one of them leaves, no larger than the largest that any allows. Null when
 * no habit was measured.
 */
export function largestOf(outcomes: readonly Outcome[], timing: TimingModel): Outcome | null {
  return largestFigure(outcomes, { degrees: habitDegrees(timing), strokes: timing.count });
}

/** The same for figures whose intervals are Student's t of so many degrees of freedom. */
export function largestFigure(
  outcomes: readonly Outcome[],
  { degrees, strokes }: { readonly degrees: number; readonly strokes: number },
): Outcome | null {
  const figures = outcomes.filter((outcome) => outcome.state === 'measured');
  const first = figures[0];
  if (!first) return null;
  const widening = studentTQuantile(1 - 0.025 / figures.length, degrees) / studentTQuantile(0.975, degrees);
  const wide = figures.map(({ value, low, high }) => ({
    low: value - (value - low) * widening,
    high: value + (high - value) * widening,
  }));
  const worst = figures.reduce((a, b) => (Math.abs(b.value) > Math.abs(a.value) ? b : a), first);
  return measured({
    value: Math.abs(worst.value),
    low: Math.max(...wide.map(({ low, high }) => Math.max(0, low, -high))),
    high: Math.max(...wide.map(({ low, high }) => Math.max(-low, high))),
    strokes,
    pointsAt: worst.pointsAt,
  });
}
