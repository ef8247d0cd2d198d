import { handColumn } from './design-columns.ts';
import { canTell, habitInterval } from './habit-contrast.ts';
import { habitOutcome } from './habit-outcome.ts';
import { handsRefusal } from './hands-refusal.ts';
import { defineMeasure } from './measure.ts';
import { notApplicable, notMeasurable } from './outcomes.ts';
import type { PlayedStroke } from './played-stroke.ts';
import { timingOrReason } from './timing-or-reason.ts';

/** Strokes of a hand below which the hands aren't compared (our judgement). */
const fewestOfHand = 8;

/** Left hand's onsets minus the right hand's, the partials' places taken out. */
export const handOffset = defineMeasure(
  {
    id: 'hand-offset',
    title: 'Left hand after right',
    unit: 'ms',
    better: 'near-zero',
    describes:
      'How much later (or, with a minus, earlier) the left hand lands than the right, partial for partial.',
    formula:
      'c: least-squares shift of left-hand strokes against right-hand strokes, local tempo, partial and accent fitted with it',
    interval: habitInterval,
    reading:
      'Near zero: the hands land alike. Plus: the left comes late. Swap the lead: if the same hand stays late it is the hand, if not it is the place in the line.',
    limits: [
      'Hands are those written, unless sound or a missed stroke says otherwise; then there is no figure.',
      "A line that gives each partial one hand can't tell hand from partial.",
    ],
    reasons: [
      'too-few-strokes',
      'too-broken-up',
      'one-hand-only',
      'hands-not-told',
      'hand-goes-with-partial',
    ],
    source:
      'Additive model by partial regression (Speckman 1988), Newey & West 1987; hands of professionals lie within about 10 ms: Fujii et al. 2011.',
  },
  (performance) => {
    const refusal = handsRefusal(performance);
    if (refusal) return [{ scope: {}, outcome: refusal }];
    const found = timingOrReason(performance);
    if ('refusal' in found) return [{ scope: {}, outcome: found.refusal }];
    const { timing } = found;
    const contrast = new Map([[handColumn, 1]]);
    const least = Math.min(
      ...(['R', 'L'] as const).map(
        (hand) => performance.strokes.filter((s, i) => timing.judged[i] === 1 && s.hand === hand).length,
      ),
    );
    if (least < fewestOfHand) {
      return [
        { scope: {}, outcome: notMeasurable('too-few-strokes', { strokes: least, needed: fewestOfHand }) },
      ];
    }
    if (!canTell(timing, contrast)) {
      return [{ scope: {}, outcome: notApplicable('hand-goes-with-partial') }];
    }
    const direction = ({ hand }: PlayedStroke) => (hand === null ? 0 : hand === 'L' ? 1 : -1);
    return [{ scope: {}, outcome: habitOutcome({ performance, timing, contrast, direction }) }];
  },
);
