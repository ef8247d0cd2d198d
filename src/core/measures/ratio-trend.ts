import { accentsAndTaps } from './level-classes.ts';
import { levelTrend } from './level-trend.ts';
import { defineMeasure } from './measure.ts';
import { measured, notApplicable, notMeasurable } from './outcomes.ts';

/** Accents, and taps, below which a trend isn't told (our judgement). */
const fewestOfKind = 16;

/** Whether accents and taps draw together towards the end. */
export const ratioTrend = defineMeasure(
  {
    id: 'ratio-trend',
    title: 'Ratio from start to end',
    unit: 'dB',
    better: 'near-zero',
    alsoBy: ['hand'],
    describes:
      'How much further (or, with a minus, less far) accents stand above taps at the end of the take than at its start.',
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
