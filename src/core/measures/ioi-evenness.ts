import { autocorrelation } from '../stats/autocorrelation.ts';
import { mean } from '../stats/mean.ts';
import { standardDeviation } from '../stats/standard-deviation.ts';
import { defineMeasure } from './measure.ts';
import { neighbourIntervals } from './neighbour-intervals.ts';
import { notMeasurable } from './outcomes.ts';
import { spreadInterval, spreadOutcome } from './spread-outcome.ts';
import { worstStrokes } from './worst-strokes.ts';

/** Intervals below which the figure isn't told (our judgement). */
const fewestIntervals = 23;
/** Lags over which intervals may be alike or make up for each other: four beats of triplets, our judgement. */
const lags = 12;

/** Scatter of the intervals between neighbouring strokes, habits and changes of tempo included, as papers quote it. */
export const ioiEvenness = defineMeasure(
  {
    id: 'ioi-evenness',
    title: 'Unevenness of intervals',
    unit: '%',
    better: 'low',
    describes:
      'Scatter of the intervals from stroke to stroke as a share of their length, lasting habits and changes of tempo included.',
    formula:
      '100 · SD of the intervals / their mean; interval: time between neighbouring strokes, per beat; the error of finding both strokes taken out',
    interval: spreadInterval,
    reading:
      'Low: every interval is as long as the next. Use it to compare with papers. For practice, timing spread tells the scatter and the place of each partial tells the habit.',
    limits: [
      "Habits, scatter and changes of tempo are all in it and can't be parted.",
      'A stroke late by some time widens two intervals, so it reads higher than timing spread.',
      'In short takes its range errs on the wide side.',
    ],
    reasons: ['too-few-strokes', 'found-too-coarsely'],
    source:
      'Coefficient of variation of inter-onset intervals; chi-square interval with degrees of freedom for correlated values (Bartlett 1946, quoted from memory).',
  },
  ({ strokes }) => {
    const neighbours = neighbourIntervals(strokes);
    const intervals = neighbours.map(({ perBeat }) => perBeat);
    const errors = neighbours.map(
      ({ end, beats }) => (strokes[end - 1]!.timeSe ** 2 + strokes[end]!.timeSe ** 2) / beats ** 2,
    );
    const n = intervals.length;
    if (n < fewestIntervals) {
      return [
        {
          scope: {},
          outcome: notMeasurable('too-few-strokes', { strokes: strokes.length, needed: fewestIntervals + 1 }),
        },
      ];
    }
    const centre = mean(intervals);
    let memory = 0;
    for (let k = 1; k <= Math.min(lags, n - 2); k++)
      memory += Math.max(0, autocorrelation(intervals, k) ** 2 - 1 / n);
    const deviation = new Map(neighbours.map(({ end, perBeat }) => [end, Math.abs(perBeat - centre)]));
    const spread = standardDeviation(intervals);
    const outcome = spreadOutcome({
      variance: (spread / centre) ** 2,
      errorVariance: mean(errors) / centre ** 2,
      degrees: Math.max(3, (n - 1) / (1 + 2 * memory)),
      perUnit: 100,
      unit: '%',
      strokes: n + 1,
      pointsAt: worstStrokes(strokes, (_, i) => (deviation.get(i) ?? 0) - 1.5 * spread),
    });
    return [{ scope: {}, outcome }];
  },
);
