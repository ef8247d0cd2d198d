import { normalQuantile } from '../stats/normal-quantile.ts';
import { defineMeasure } from './measure.ts';
import { measured, notApplicable, notMeasurable } from './outcomes.ts';
import { correctingModels, fitTempo, tempoInterval } from './tempo-fit.ts';
import { timingOrReason } from './timing-or-reason.ts';
import { worstStrokes } from './worst-strokes.ts';

/** Strokes on the click below which nothing is said (our judgement: eight triplets). */
const fewestOnClick = 24;

/** The constant part of the distance to the click. Exists with a click alone. */
export const offset = defineMeasure(
  {
    id: 'offset',
    title: 'Against the click',
    unit: 'ms',
    better: 'near-zero',
    describes:
      'How far behind the click (or, with a minus, ahead of it) strokes lie on the whole. Sound takes 3 ms for each metre, so the places of speaker, microphone and pad are part of it.',
    formula: 'mean of (onset − click), habits counted by their mean; models of slow wander weigh the strokes',
    interval: `${tempoInterval} The delay of a played click adds its own error.`,
    reading:
      'Near zero: on the click. A steady lead of some milliseconds is usual and no fault. Look at it only when it changes from take to take with nothing moved in the room.',
    limits: [
      'Exists only with a click.',
      'Sound takes 3 ms a metre, so moving speaker or microphone moves it.',
      "With slow corrections a short take's range is wide.",
    ],
    reasons: ['too-few-strokes', 'too-broken-up', 'needs-a-click', 'too-few-on-the-click'],
    source:
      'Mean of the asynchronies with wander by Kalman filter (Harvey 1989), averaged over models. Players tend to lead a click: Repp 2005 (quoted from memory).',
  },
  (performance) => {
    const { reference, strokes } = performance;
    if (!('asynchrony' in reference)) {
      return [{ scope: {}, outcome: notApplicable('needs-a-click') }];
    }
    const found = timingOrReason(performance);
    if ('refusal' in found) return [{ scope: {}, outcome: found.refusal }];
    const { timing } = found;
    const own = strokes
      .map((stroke, i) => ({ stroke, i, asynchrony: reference.asynchrony.get(stroke.stroke) }))
      .flatMap(({ asynchrony, ...one }) =>
        asynchrony === undefined || timing.judged[one.i] === 0 ? [] : [{ ...one, asynchrony }],
      );
    const n = own.length;
    if (n < fewestOnClick) {
      return [
        { scope: {}, outcome: notMeasurable('too-few-on-the-click', { strokes: n, needed: fewestOnClick }) },
      ];
    }
    const habit = Float64Array.from(own, ({ stroke, i }) => stroke.time - timing.withoutHabits[i]!);
    const centre = habit.reduce((sum, h) => sum + h, 0) / n;
    const place = Float64Array.from(own, ({ stroke }) => stroke.position * stroke.slot.divisions);
    const stretch = Int32Array.from(own, ({ stroke }) => stroke.stretch);
    for (let k = 1; k < n; k++) {
      if (stretch[k] === stretch[k - 1]) place[k] = Math.max(place[k]!, place[k - 1]! + 0.5);
    }
    const y = Float64Array.from(own, ({ asynchrony }, k) => asynchrony - habit[k]! + centre);
    const series = { y, columns: [new Float64Array(n).fill(1)], stretch, place, withoutLevels: true };
    const mixture = fitTempo(series, correctingModels, n / 2);
    if (!mixture) return [{ scope: {}, outcome: notMeasurable('too-broken-up', { needed: fewestOnClick }) }];
    const value = 1000 * mixture.mean;
    // The delay of a played click is one more error, the same for every stroke and independent of the playing.
    const shared = 1000 * normalQuantile(0.975) * reference.sharedSe;
    const low = value - Math.hypot(value - 1000 * mixture.quantile(0.025), shared);
    const high = value + Math.hypot(1000 * mixture.quantile(0.975) - value, shared);
    const byStroke = new Map(own.map(({ stroke, asynchrony }) => [stroke.stroke, asynchrony]));
    const pointsAt =
      low * high > 0
        ? worstStrokes(strokes, ({ stroke }) => Math.sign(value) * (byStroke.get(stroke) ?? 0))
        : [];
    return [{ scope: {}, outcome: measured({ value, low, high, strokes: n, pointsAt }) }];
  },
);
