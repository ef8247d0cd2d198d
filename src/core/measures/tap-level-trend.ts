import { accentsAndTaps } from './level-classes.ts';
import { levelTrend } from './level-trend.ts';
import { defineMeasure } from './measure.ts';
import { measured, notApplicable, notMeasurable } from './outcomes.ts';
import { tempoInterval } from './tempo-fit.ts';

/** Taps below which a trend isn't told (our judgement: sixteen beats with two taps). */
const fewestTaps = 32;

/** Whether taps rise or sink towards the end. */
export const tapLevelTrend = defineMeasure(
  {
    id: 'tap-level-trend',
    title: 'Taps, start to end',
    unit: 'dB',
    better: 'near-zero',
    alsoBy: ['hand'],
    describes:
      'How much louder (or, with a minus, softer) taps are at the end of the take than at its start.',
    formula:
      'c: change of tap level over the take, dB; beat means less the mean of line, partial and hand, on time from −½ to ½',
    interval: tempoInterval,
    reading:
      'Near zero: the taps stay where they began. Plus: they creep up, as they often do when one tires. Shorter takes, more rest.',
    limits: [
      "Levels hang together from beat to beat, so a short take's range is wide.",
      "What changes only from line to line isn't in it.",
      'A phone that turns its gain up makes one as well.',
    ],
    reasons: ['no-taps', 'too-short-for-a-trend'],
    source: 'Regression of beat means with memory by Kalman filter (Harvey 1989), averaged over models.',
  },
  ({ asked, strokes }) => {
    if (asked.every((slot) => slot.grace || slot.accent)) {
      return [{ scope: {}, outcome: notApplicable('no-taps') }];
    }
    const { taps } = accentsAndTaps(strokes);
    const facts = { strokes: taps.length, needed: fewestTaps };
    const trend = taps.length < fewestTaps ? null : levelTrend(taps, { ratio: false });
    if (!trend) return [{ scope: {}, outcome: notMeasurable('too-short-for-a-trend', facts) }];
    const [low, high] = [trend.quantile(0.025), trend.quantile(0.975)];
    return [{ scope: {}, outcome: measured({ value: trend.mean, low, high, strokes: taps.length }) }];
  },
);
