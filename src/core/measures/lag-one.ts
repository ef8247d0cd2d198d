import { bartlettVariance } from '../stats/bartlett-variance.ts';
import { studentTQuantile } from '../stats/student-t-quantile.ts';
import { defineMeasure } from './measure.ts';
import { neighbourIntervals } from './neighbour-intervals.ts';
import { measured, notMeasurable } from './outcomes.ts';
import { timingOrReason } from './timing-or-reason.ts';

/** Pairs of intervals below which the figure isn't told (our judgement). */
const fewestPairs = 23;
/** Pairs next to each other share an interval; a beat's pattern comes back: two beats of triplets, our judgement. */
const lag = 6;

/** Correlation of an interval with the next, habits taken out, for readers of papers. */
export const lagOne = defineMeasure(
  {
    id: 'lag-one',
    title: "Neighbours' correlation",
    unit: 'correlation',
    better: 'near-zero',
    exportOnly: true,
    describes:
      'Autocorrelation of the intervals at lag one, habits taken out: below 0 where an interval makes up for the one before.',
    formula:
      'sum of a · b / sum of (a² + b²) / 2 over neighbouring intervals a and b less their mean, habits taken out',
    interval: "Delta method with Newey & West, lag 6; Student's t of n / 6 − 1.",
    reading:
      'For comparing with papers on tapping: below 0 where an interval makes up for the one before, above 0 where the tempo drifts.',
    limits: ['Drift of tempo raises it.', 'At 48 strokes its range is a little too narrow.'],
    reasons: ['too-few-strokes', 'too-broken-up'],
    source: 'Wing & Kristofferson 1973; interval by the delta method, Newey & West 1987.',
  },
  (performance) => {
    const found = timingOrReason(performance);
    if ('refusal' in found) return [{ scope: {}, outcome: found.refusal }];
    const { withoutHabits, judged } = found.timing;
    const own = neighbourIntervals(performance.strokes, withoutHabits).filter(
      ({ end }) => judged[end] === 1 && judged[end - 1] === 1,
    );
    const centre = own.reduce((sum, one) => sum + one.perBeat, 0) / Math.max(1, own.length);
    const pairs = own.flatMap(({ end, perBeat }, k) => {
      const before = own[k - 1];
      return before?.end === end - 1 ? [[before.perBeat - centre, perBeat - centre] as const] : [];
    });
    const n = pairs.length;
    const squares = pairs.reduce((sum, [a, b]) => sum + (a * a + b * b) / 2, 0);
    if (n < fewestPairs || !(squares > 0)) {
      const facts = { strokes: performance.strokes.length, needed: fewestPairs + 2 };
      return [{ scope: {}, outcome: notMeasurable('too-few-strokes', facts) }];
    }
    const value = pairs.reduce((sum, [a, b]) => sum + a * b, 0) / squares;
    const pulls = pairs.map(([a, b]) => (a * b - (value * (a * a + b * b)) / 2) / squares);
    const half = studentTQuantile(0.975, Math.max(3, n / lag - 1)) * Math.sqrt(bartlettVariance(pulls, lag));
    const low = Math.max(-1, value - half);
    return [
      { scope: {}, outcome: measured({ value, low, high: Math.min(1, value + half), strokes: n + 2 }) },
    ];
  },
);
