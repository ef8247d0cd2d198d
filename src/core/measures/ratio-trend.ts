import { accentsAndTaps } from './level-classes.ts';
import { levelTrend } from './level-trend.ts';
import { defineMeasure } from './measure.ts';
import { measured, notApplicable, notMeasurable } from './outcomes.ts';
import { tempoInterval } from './tempo-fit.ts';

/** Accents, and taps, below which a trend isn't told (our judgement). */
const fewestOfKind = 16;

/** Whether accents and taps draw together towards the end. */
export const ratioTrend = defineMeasure(
  {
    id: 'ratio-trend',
    title: 'Ratio, start to end',
    unit: 'dB',
    better: 'near-zero',
    alsoBy: ['hand'],
    describes:
      'How much further (or, with a minus, less far) accents stand above taps at the end of the take than at its start.',
    formula:
      'c: change of (accent level − tap level) over the take, dB; beat means less the mean of line, partial and hand, on time from −½ to ½',
    interval: tempoInterval,
    reading:
      "Near zero: the contrast holds. Minus: accents and taps draw together towards the end; shorten the take until they don't.",
    limits: [
      "Levels hang together from beat to beat, so a short take's range is wide.",
      "What changes only from line to line isn't in it.",
    ],
    reasons: ['no-accents', 'no-taps', 'too-short-for-a-trend'],
    source: 'Regression of beat means with memory by Kalman filter (Harvey 1989), averaged over models.',
  },
  ({ asked, strokes }) => {
    const main = asked.filter((slot) => !slot.grace);
    if (main.every((slot) => !slot.accent)) return [{ scope: {}, outcome: notApplicable('no-accents') }];
    if (main.every((slot) => slot.accent)) return [{ scope: {}, outcome: notApplicable('no-taps') }];
    const { accents, taps } = accentsAndTaps(strokes);
    const least = Math.min(accents.length, taps.length);
    const trend = least < fewestOfKind ? null : levelTrend(strokes, { ratio: true });
    if (!trend) {
      const facts = { strokes: least, needed: fewestOfKind };
      return [{ scope: {}, outcome: notMeasurable('too-short-for-a-trend', facts) }];
    }
    const [low, high] = [trend.quantile(0.025), trend.quantile(0.975)];
    return [{ scope: {}, outcome: measured({ value: trend.mean, low, high, strokes: strokes.length }) }];
  },
);
