import { median } from '../stats/median.ts';
import { defineMeasure } from './measure.ts';
import { measured, notMeasurable } from './outcomes.ts';
import { tempoCourse } from './tempo-course.ts';
import { fitTempo, tempoInterval } from './tempo-fit.ts';
import { timingOrReason } from './timing-or-reason.ts';

/** Strokes at the take's end that show where the tempo went. Our judgement. */
const shown = 3;

/** Change of tempo from the start of the take to its end: the curvature of the deviations, not their slope. */
export const tempoChange = defineMeasure(
  {
    id: 'tempo-change',
    title: 'Tempo, start to end',
    unit: '%',
    better: 'near-zero',
    describes: 'How much faster (or, with a minus, slower) the end of the take is than its start.',
    formula:
      '100 · ((1 − 2c / h) / (1 + 2c / h) − 1); c: curvature of (onset − asked time), time from −1 to 1; h: half the asked time',
    interval: tempoInterval,
    reading:
      'Near zero: the end is as fast as the start. Plus: it sped up. Minus: it slowed down. If it slows where the arms tire, shorten the take instead of pushing on.',
    limits: [
      'A tempo that rises and falls again reads as no change; the picture of the local tempo shows it.',
      'At 48 strokes to a click, slow corrections pass for drift, and the range holds a little less often than it says.',
    ],
    reasons: ['too-few-strokes', 'too-broken-up'],
    source:
      'Quadratic regression with wander by Kalman filter (Harvey 1989), averaged over models; listeners notice 0.2 to 2 % (Madison & Merker 2004; Drake & Botte 1993).',
  },
  (performance) => {
    const found = timingOrReason(performance);
    if ('refusal' in found) return [{ scope: {}, outcome: found.refusal }];
    const { timing } = found;
    const usual = median(timing.period.filter((period) => period !== null));
    const { played, half, series, models } = tempoCourse(performance, timing, usual);
    const columns = [played, played.map((t) => t * t)];
    const mixture = fitTempo({ ...series, columns }, models, timing.count / 2);
    if (!mixture) return [{ scope: {}, outcome: notMeasurable('too-broken-up', { needed: timing.count }) }];
    // The derivative of c t² runs from −2c to 2c over half the asked time.
    const faster = (c: number) => 100 * ((1 - (2 * c) / half) / (1 + (2 * c) / half) - 1);
    const last = performance.strokes.filter((_, i) => timing.judged[i] === 1).slice(-shown);
    const low = faster(mixture.quantile(0.975));
    const high = faster(mixture.quantile(0.025));
    const pointsAt = low * high > 0 ? last.map((s) => s.stroke) : [];
    const value = faster(mixture.mean);
    return [{ scope: {}, outcome: measured({ value, low, high, strokes: timing.count, pointsAt }) }];
  },
);
