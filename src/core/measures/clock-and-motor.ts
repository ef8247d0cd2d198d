import type { Outcome } from '../result/take-result.ts';
import { chiSquareQuantile } from '../stats/chi-square-quantile.ts';
import { clockAndMotorVariance } from '../stats/clock-and-motor-variance.ts';
import { measured, notApplicable, notMeasurable } from './outcomes.ts';
import type { Performance } from './performance.ts';
import { timingOrReason } from './timing-or-reason.ts';

/** Intervals below which the split isn't tried; common practice in tapping studies. */
const fewestIntervals = 100;
/** Above this share of the motor variance the finding of strokes makes the figure (our judgement). */
const largestErrorShare = 0.25;

type Outcomes = { readonly clock: Outcome; readonly motor: Outcome };
const both = (outcome: Outcome): Outcomes => ({ clock: outcome, motor: outcome });

/** 95 % interval of a standard deviation, ms, from its variance (s²) and that variance's own variance. */
function spreadInterval(variance: number, varianceOfIt: number) {
  const degrees = Math.max(1, (2 * variance ** 2) / varianceOfIt);
  const at = (p: number) => 1000 * Math.sqrt((degrees * variance) / chiSquareQuantile(p, degrees));
  return { value: 1000 * Math.sqrt(variance), low: at(0.975), high: at(0.025) };
}

/** Intervals without habits between judged strokes one partial apart, and the later stroke's place. */
function ownIntervals({ strokes }: Performance, withoutHabits: Float64Array, judged: Uint8Array) {
  const lengths: number[] = [];
  const ends: number[] = [];
  strokes.forEach((stroke, end) => {
    const before = strokes[end - 1];
    if (before?.stretch !== stroke.stretch || judged[end] === 0 || judged[end - 1] === 0) return;
    const partials = (stroke.position - before.position) * stroke.slot.divisions;
    if (Math.abs(partials - 1) > 0.01 || before.slot.divisions !== stroke.slot.divisions) return;
    lengths.push(withoutHabits[end]! - withoutHabits[end - 1]!);
    ends.push(end);
  });
  return { lengths, ends };
}

/**
 * Scatter of the interval kept in mind and scatter that the movement adds, s², when nobody gives the time: an interval
 * is one tick of a clock plus the difference of two movements, so that γ(1) = −motor² and γ(0) = clock² + 2 motor²
 * (Wing & Kristofferson 1973). The variance of finding the strokes is taken out of the motor part. Intervals from the
 * large-sample covariances of γ(0) and γ(1) of such a series (Bartlett 1946, quoted from memory). Where the estimates
 * aren't possible under the model (γ(1) > 0, or γ(0) + 2γ(1) < 0), that is said.
 */
export function clockAndMotor(performance: Performance): Outcomes {
  const { reference, strokes } = performance;
  if ('asynchrony' in reference) return both(notApplicable('played-to-a-click'));
  if (
    new Set(strokes.map(({ slot }) => `${slot.divisions} ${performance.sheet.lines[slot.line]!.bpm}`)).size >
    1
  ) {
    return both(notApplicable('several-tempos'));
  }
  const found = timingOrReason(performance);
  if ('refusal' in found) return both(found.refusal);
  const { timing } = found;
  const { lengths, ends } = ownIntervals(performance, timing.withoutHabits, timing.judged);
  const n = lengths.length;
  const neighbours = ends.filter((end, k) => end - 1 === ends[k - 1]).length;
  // Rests and missed strokes leave intervals without a neighbour, which say nothing of the movement.
  const inRow = Math.min(n, 2 * neighbours);
  if (inRow < fewestIntervals) {
    return both(notMeasurable('too-few-intervals', { intervals: inRow, needed: fewestIntervals }));
  }
  const { lagZero: zero, lagOne: one, clock, motor } = clockAndMotorVariance(lengths, ends);
  if (motor <= 0 || clock <= 0) return both(notMeasurable('clock-and-motor-do-not-split', {}));
  const motorVariance = (zero ** 2 + 3 * one ** 2) / n;
  const clockVariance = (6 * zero ** 2 + 16 * one ** 2 + 16 * zero * one) / n;
  const error = strokes.reduce((sum, s) => sum + s.timeSe ** 2, 0) / strokes.length;
  const facts = { spread: 1000 * Math.sqrt(motor), error: 1000 * Math.sqrt(error), unit: 'ms' };
  return {
    clock: measured({ ...spreadInterval(clock, clockVariance), strokes: n + 1 }),
    motor:
      error > largestErrorShare * motor
        ? notMeasurable('found-too-coarsely', facts)
        : measured({ ...spreadInterval(motor - error, motorVariance), strokes: n + 1 }),
  };
}
