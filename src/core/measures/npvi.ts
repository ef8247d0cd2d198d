import { bartlettVariance } from '../stats/bartlett-variance.ts';
import { studentTQuantile } from '../stats/student-t-quantile.ts';
import { defineMeasure } from './measure.ts';
import { neighbourIntervals } from './neighbour-intervals.ts';
import { measured, notMeasurable } from './outcomes.ts';

/** Pairs of intervals below which the figure isn't told (our judgement). */
const fewestPairs = 23;
/** Pairs next to each other share an interval; a beat's pattern comes back: two beats of triplets, our judgement. */
const lag = 6;

/** Contrast of neighbouring intervals, for readers of papers. */
export const npvi = defineMeasure(
  {
    id: 'npvi',
    title: "Neighbours' contrast",
    unit: '%',
    better: 'low',
    exportOnly: true,
    describes: 'Mean difference of neighbouring intervals against their own mean.',
    formula: 'mean of 200 · |a − b| / (a + b) over neighbouring intervals a and b, per beat',
    interval: "Newey & West standard error, lag 6; Student's t of n / 6 − 1.",
    reading: 'For comparing with papers on rhythm: 0 when all intervals are alike.',
    limits: [
      'Habits, scatter and changes of tempo are all in it.',
      'At 48 strokes its range is a little too narrow.',
    ],
    reasons: ['too-few-strokes'],
    source:
      'Normalised pairwise variability index, Grabe & Low 2002 (quoted from memory); Newey & West 1987.',
  },
  ({ strokes }) => {
    const intervals = neighbourIntervals(strokes);
    const contrasts = intervals.flatMap(({ end, perBeat }, k) => {
      const before = intervals[k - 1];
      if (before?.end !== end - 1) return [];
      return [(200 * Math.abs(perBeat - before.perBeat)) / (perBeat + before.perBeat)];
    });
    const n = contrasts.length;
    if (n < fewestPairs) {
      const facts = { strokes: strokes.length, needed: fewestPairs + 2 };
      return [{ scope: {}, outcome: notMeasurable('too-few-strokes', facts) }];
    }
    const value = contrasts.reduce((sum, c) => sum + c, 0) / n;
    const around = contrasts.map((c) => (c - value) / n);
    const half = studentTQuantile(0.975, Math.max(3, n / lag - 1)) * Math.sqrt(bartlettVariance(around, lag));
    return [
      {
        scope: {},
        outcome: measured({ value, low: Math.max(0, value - half), high: value + half, strokes: n + 2 }),
      },
    ];
  },
);
