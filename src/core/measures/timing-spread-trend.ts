import { defineMeasure } from './measure.ts';
import { measured, notMeasurable } from './outcomes.ts';
import { timingOrReason } from './timing-or-reason.ts';

/** Strokes below which a trend isn't told (our judgement: nearly sixteen triplets, a few strokes left out). */
const fewestForTrend = 42;
/** Share of the squared residuals that counts as independent; from simulations of players. */
const independent = 0.68;
/** 97.5 % point of the normal distribution. */
const normal975 = 1.959963984540054;
/** More than enough rounds of Fisher's scoring to come to rest: it ends when a step is below 1e-9. */
const rounds = 30;

/** Whether timing loosens towards the end. */
export const timingSpreadTrend = defineMeasure(
  {
    id: 'timing-spread-trend',
    title: 'Timing, start to end',
    unit: '%',
    better: 'near-zero',
    describes:
      'How much wider (or, with a minus, narrower) strokes scatter at the end of the take than at its start.',
    formula:
      '100 · (exp(s) − 1); s: slope of the logarithm of r² over the take, time from −1 to 1; r: stroke from local tempo and habits',
    interval:
      'Normal, with 68 % of the squared residuals counted as independent and their own fourth moment.',
    reading:
      'Near zero: as tight at the end as at the start. Plus: it loosens; shorten the take, or rest. Minus: it settled after the start.',
    limits: [
      'One wild stroke near an end pulls it.',
      'Under about 140 strokes only a change to twice the spread or more shows.',
    ],
    reasons: ['too-few-strokes', 'too-broken-up', 'too-short-for-a-trend', 'found-too-coarsely'],
    source:
      'Regression of the logarithm of the variance by Fisher scoring (Cook & Weisberg 1983, quoted from memory), squared residuals counted as 68 % independent: from simulations of players.',
  },
  (performance) => {
    const found = timingOrReason(performance);
    if ('refusal' in found) return [{ scope: {}, outcome: found.refusal }];
    const { timing } = found;
    const at = performance.strokes.flatMap((stroke, i) => (timing.judged[i] === 1 ? [{ stroke, i }] : []));
    const n = at.length;
    const error = at.reduce((sum, { stroke }) => sum + stroke.timeSe ** 2, 0) / Math.max(1, n);
    const squares = at.map(({ i }) => timing.scaledResidual[i]! ** 2);
    const level = squares.reduce((sum, z) => sum + z, 0) / Math.max(1, n);
    if (n < fewestForTrend) {
      const facts = { strokes: n, needed: fewestForTrend };
      return [{ scope: {}, outcome: notMeasurable('too-short-for-a-trend', facts) }];
    }
    if (error > 0.25 * level || level === 0) {
      const facts = { spread: 1000 * Math.sqrt(level), error: 1000 * Math.sqrt(error), unit: 'ms' };
      return [{ scope: {}, outcome: notMeasurable('found-too-coarsely', facts) }];
    }
    const first = at[0]!.stroke.time;
    const span = at[n - 1]!.stroke.time - first;
    const time = at.map(({ stroke }) => (2 * (stroke.time - first)) / span - 1);
    const centre = time.reduce((sum, t) => sum + t, 0) / n;
    const course = time.map((t) => t - centre);
    const information = course.reduce((sum, t) => sum + t * t, 0);
    let slope = 0;
    let fourth = 2;
    for (let round = 0; round < rounds; round++) {
      const plain = squares.map((z, k) => z * Math.exp(-slope * course[k]!));
      const scale = plain.reduce((sum, z) => sum + z, 0) / n;
      const excess = plain.map((z) => z / scale - 1);
      fourth = Math.max(2, excess.reduce((sum, e) => sum + e * e, 0) / n);
      const step = excess.reduce((sum, e, k) => sum + course[k]! * e, 0) / information;
      slope += Math.max(-1, Math.min(1, step));
      if (Math.abs(step) < 1e-9) break;
    }
    const half = normal975 * Math.sqrt(fourth / independent / information);
    // Half the variance's logarithm is the spread's; from −1 to 1 it changes twice by that.
    const percent = (log: number) => 100 * (Math.exp(log) - 1);
    const figure = {
      value: percent(slope),
      low: percent(slope - half),
      high: percent(slope + half),
      strokes: n,
    };
    return [{ scope: {}, outcome: measured(figure) }];
  },
);
