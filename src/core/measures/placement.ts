import { partialColumn } from './design-columns.ts';
import { habitInterval } from './habit-contrast.ts';
import { habitOutcome } from './habit-outcome.ts';
import { largestOf } from './largest-of.ts';
import { defineMeasure, type Part } from './measure.ts';
import { notApplicable, notMeasurable } from './outcomes.ts';
import type { PlayedStroke } from './played-stroke.ts';
import { timingOrReason } from './timing-or-reason.ts';

/** Strokes on a partial below which its place isn't told (our judgement). */
const fewestOnPartial = 8;

/** The division most strokes of the take have: parts of a take are named by partial alone. */
function mainDivisions(strokes: readonly PlayedStroke[]): number {
  const counts = new Map<number, number>();
  for (const { slot } of strokes) counts.set(slot.divisions, (counts.get(slot.divisions) ?? 0) + 1);
  return [...counts].reduce((a, b) => (b[1] > a[1] ? b : a))[0];
}

/**
 * How far each partial of the take's main division lies from its even place: against the mean of the partials, so that
 * nothing is said about a click. Where a partial always has the same hand or accent, the figure holds their share too.
 */
export const placement = defineMeasure(
  {
    id: 'placement',
    title: 'Partial furthest off',
    unit: 'ms',
    better: 'near-zero',
    describes:
      'How early (minus) or late each partial lies against its even place in the beat; for the whole take the largest distance, early or late.',
    formula:
      'c(k) − mean of all c; c(k): least-squares place of partial k, local tempo, hand and accent fitted with it. Whole take: the largest size',
    interval: `${habitInterval} For the largest, each range is first widened until all hold together (Bonferroni).`,
    reading:
      'Near zero: the beat is divided evenly. A partial with a minus is rushed, with a plus dragged. Play the line slowly with the subdivision sounding and place that partial with the click.',
    limits: [
      'It is measured against the mean of the partials, so it says nothing of ahead or behind the click.',
      'Where a partial always has the same hand or accent, their habits are part of it.',
    ],
    reasons: ['too-few-strokes', 'too-broken-up', 'one-partial-only'],
    source:
      'Additive model by partial regression (Speckman 1988), Newey & West 1987 standard error; sizes in Friberg & Sundberg 1995.',
  },
  (performance) => {
    const found = timingOrReason(performance);
    if ('refusal' in found) return [{ scope: {}, outcome: found.refusal }];
    const { timing } = found;
    const divisions = mainDivisions(performance.strokes);
    const on = (partial: number) => (stroke: PlayedStroke) =>
      stroke.slot.divisions === divisions && stroke.slot.partial === partial;
    const counts = Array.from({ length: divisions }, (_, k) => ({
      partial: k + 1,
      strokes: performance.strokes.filter((s, i) => timing.judged[i] === 1 && on(k + 1)(s)).length,
    }));
    const present = counts.filter(({ strokes }) => strokes > 0);
    if (present.length < 2) return [{ scope: {}, outcome: notApplicable('one-partial-only') }];
    const parts = present.map(({ partial, strokes }): Part => {
      const scope = { partial };
      if (strokes < fewestOnPartial) {
        return { scope, outcome: notMeasurable('too-few-strokes', { strokes, needed: fewestOnPartial }) };
      }
      const contrast = new Map(
        present.map((other) => [
          partialColumn(divisions, other.partial),
          (other.partial === partial ? 1 : 0) - 1 / present.length,
        ]),
      );
      return {
        scope,
        outcome: habitOutcome({ performance, timing, contrast, direction: (s) => (on(partial)(s) ? 1 : 0) }),
      };
    });
    const outcomes = parts.map((part) => part.outcome);
    const whole = largestOf(outcomes, timing) ?? outcomes[0]!;
    return [{ scope: {}, outcome: whole }, ...parts];
  },
);
