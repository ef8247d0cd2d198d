import { mean } from '../stats/mean.ts';
import { changeColumn } from './design-columns.ts';
import { canTell, habitInterval } from './habit-contrast.ts';
import { habitOutcome } from './habit-outcome.ts';
import { defineMeasure } from './measure.ts';
import { notApplicable, notMeasurable } from './outcomes.ts';
import type { PlayedStroke } from './played-stroke.ts';
import { timingOrReason } from './timing-or-reason.ts';

/** Intervals of either kind below which they aren't compared (our judgement). */
const fewestIntervals = 8;

/** Intervals in which the hands change against those in which one hand plays on. */
export const handChangeGap = defineMeasure(
  {
    id: 'hand-change-gap',
    title: 'Gap at change of hands',
    unit: 'ms',
    better: 'near-zero',
    describes:
      'How much longer (or, with a minus, shorter) the interval is when the other hand takes over than when the same hand plays on.',
    formula:
      'c · (mean of d at changes − mean of d where a hand plays on); c: least-squares shift of strokes that change hands; d: 1, 0 or −1, what such a shift does to the interval before the stroke',
    interval: habitInterval,
    reading:
      'Near zero: no seam between the hands. Plus: the other hand comes in late. Minus: it is hurried in. Doubles and triples of both hands show it best.',
    limits: ['A line that changes hands at every stroke has nothing to compare with.'],
    reasons: [
      'too-few-strokes',
      'too-broken-up',
      'one-hand-only',
      'hands-always-change',
      'change-goes-with-partial',
    ],
    source: 'Additive model by partial regression (Speckman 1988), Newey & West 1987.',
  },
  (performance) => {
    const { asked, strokes } = performance;
    const found = timingOrReason(performance);
    if ('refusal' in found) return [{ scope: {}, outcome: found.refusal }];
    const { timing } = found;
    const written = new Set(asked.filter((slot) => !slot.grace).map((slot) => slot.hand));
    if (written.size < 2) return [{ scope: {}, outcome: notApplicable('one-hand-only') }];
    const changes: number[] = [];
    const repeats: number[] = [];
    strokes.forEach((stroke, i) => {
      const before = strokes[i - 1];
      if (stroke.handChange === null || before?.stretch !== stroke.stretch) return;
      const late = (stroke.handChange ? 1 : 0) - (before.handChange ? 1 : 0);
      (stroke.handChange ? changes : repeats).push(late);
    });
    if (repeats.length === 0) return [{ scope: {}, outcome: notApplicable('hands-always-change') }];
    const least = Math.min(changes.length, repeats.length);
    if (least < fewestIntervals) {
      return [
        { scope: {}, outcome: notMeasurable('too-few-strokes', { strokes: least, needed: fewestIntervals }) },
      ];
    }
    if (!canTell(timing, new Map([[changeColumn, 1]]))) {
      return [{ scope: {}, outcome: notApplicable('change-goes-with-partial') }];
    }
    // A stroke late by one unit makes its own interval longer and the next one shorter.
    const contrast = new Map([[changeColumn, mean(changes) - mean(repeats)]]);
    const direction = ({ handChange }: PlayedStroke) => (handChange ? 1 : 0);
    return [{ scope: {}, outcome: habitOutcome({ performance, timing, contrast, direction }) }];
  },
);
