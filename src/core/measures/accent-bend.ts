import { placeColumn } from './design-columns.ts';
import { canTell, habitInterval } from './habit-contrast.ts';
import { habitOutcome } from './habit-outcome.ts';
import { largestOf } from './largest-of.ts';
import { defineMeasure, type Part } from './measure.ts';
import { notApplicable, notMeasurable } from './outcomes.ts';
import type { AccentPlace } from './played-stroke.ts';
import { timingOrReason } from './timing-or-reason.ts';

/** Strokes at a place below which its bend isn't told (our judgement). */
const fewestAtPlace = 8;
const places = ['before', 'on', 'after'] as const;
const allPlaces: readonly AccentPlace[] = [...places, 'other'];

/** How far strokes before, on and after an accent lie from where the same partial and hand lies elsewhere. */
export const accentBend = defineMeasure(
  {
    id: 'accent-bend',
    title: 'Bend at the accent',
    unit: 'ms',
    better: 'near-zero',
    describes:
      'How early (minus) or late strokes come just before, on and just after an accent, against all other strokes of the same partial and hand; for the whole take the largest of the three.',
    formula:
      'c(place) − mean of c at all other places, by strokes; c: least-squares shift before, on, after an accent, partial and hand fitted with it. Whole take: the largest size',
    interval: `${habitInterval} For the largest, each range is first widened until all hold together (Bonferroni).`,
    reading:
      "Near zero: the rhythm doesn't bend round the accent. Minus before an accent: it is rushed into. Plus after it: the next stroke comes late. Play the same line without accents, then add them without moving the rhythm.",
    limits: [
      'Needs lines whose accents fall on several partials.',
      'Under about fifty strokes only gross bends show.',
    ],
    reasons: [
      'too-few-strokes',
      'too-broken-up',
      'no-accents',
      'no-taps',
      'no-such-place',
      'accent-goes-with-partial',
    ],
    source:
      'Additive model by partial regression (Speckman 1988), Newey & West 1987; the interval after an accent tends to lengthen: Dahl 2000, 2004.',
  },
  (performance) => {
    const found = timingOrReason(performance);
    if ('refusal' in found) return [{ scope: {}, outcome: found.refusal }];
    const { timing } = found;
    const count = (place: AccentPlace) =>
      performance.strokes.filter((s, i) => timing.judged[i] === 1 && s.place === place).length;
    const counts = new Map(allPlaces.map((place) => [place, count(place)]));
    if (counts.get('on') === 0) return [{ scope: {}, outcome: notApplicable('no-accents') }];
    if (counts.get('on') === timing.count) return [{ scope: {}, outcome: notApplicable('no-taps') }];
    const parts = places.map((place): Part => {
      const strokes = counts.get(place)!;
      const others = timing.count - strokes;
      const contrast = new Map(
        allPlaces.map((other) => [placeColumn(other), other === place ? 1 : -counts.get(other)! / others]),
      );
      if (strokes === 0) return { scope: { place }, outcome: notApplicable('no-such-place') };
      if (!canTell(timing, contrast)) {
        return { scope: { place }, outcome: notApplicable('accent-goes-with-partial') };
      }
      if (strokes < fewestAtPlace) {
        return {
          scope: { place },
          outcome: notMeasurable('too-few-strokes', { strokes, needed: fewestAtPlace }),
        };
      }
      const direction = (stroke: { readonly place: AccentPlace }) => (stroke.place === place ? 1 : 0);
      return { scope: { place }, outcome: habitOutcome({ performance, timing, contrast, direction }) };
    });
    const outcomes = parts.map((part) => part.outcome);
    const whole =
      largestOf(outcomes, timing) ??
      outcomes.find((outcome) => outcome.state === 'not-measurable') ??
      notApplicable('accent-goes-with-partial');
    return [{ scope: {}, outcome: whole }, ...parts];
  },
);
