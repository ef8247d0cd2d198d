import { chiSquareQuantile } from '../stats/chi-square-quantile.ts';
import { median } from '../stats/median.ts';
import { halfWindow } from './local-lines.ts';
import { defineMeasure } from './measure.ts';
import { measured, notMeasurable } from './outcomes.ts';
import { tempoCourse } from './tempo-course.ts';
import { fitTempo } from './tempo-fit.ts';
import { timingOrReason } from './timing-or-reason.ts';
import { wanderDegrees } from './wander-degrees.ts';
import { comparable } from './worst-strokes.ts';

/** Beats in one go below which there is no slow part (our judgement: three windows of the local tempo). */
const fewestBeats = 12;
/** Models of the wander that count, by weight; the rest change the interval little. */
const likeliest = 4;
/** Strokes of the slow part that show it at its widest. Our judgement. */
const shown = 3;

/** Slow waves of the strokes round a steady tempo. */
export const wander = defineMeasure(
  {
    id: 'wander',
    title: 'Slow wander',
    unit: 'ms',
    better: 'low',
    describes:
      "How far the strokes sway slowly, over four beats and more, round the take's own steady tempo. Grows with the take's length where no click holds it, so it compares with takes of like length and reference alone.",
    formula:
      'sqrt( mean of w² ); w: four-beat local line of the onsets less habits, from the straight line through the longest run',
    interval:
      'Chi-square with degrees of freedom of such waves in a take of that length, under the four likeliest models of the wander.',
    reading:
      'Low: the pulse stands still. High with a click: it is left and caught again in long waves. Practise with fewer clicks, and count the bars aloud.',
    limits: [
      "Grows with the take's length where no click holds it.",
      'Its range is wide: a factor of two to ten.',
      'Compare only takes of like length and like reference.',
    ],
    reasons: ['too-few-strokes', 'too-broken-up', 'no-run-long-enough'],
    source:
      'Root mean square of the four-beat smooth round its line; chi-square interval with moment-matched degrees of freedom (Satterthwaite 1946) under the likeliest models of the wander.',
  },
  (performance) => {
    const found = timingOrReason(performance);
    if ('refusal' in found) return [{ scope: {}, outcome: found.refusal }];
    const { timing } = found;
    const judged = performance.strokes.flatMap((stroke, i) =>
      timing.judged[i] === 1 ? [{ stroke, i }] : [],
    );
    const lengths = new Map<number, number>();
    for (const { stroke } of judged) {
      lengths.set(stroke.stretch, Math.max(lengths.get(stroke.stretch) ?? 0, stroke.position));
    }
    const [longest, beats] = [...lengths].reduce((a, b) => (b[1] > a[1] ? b : a));
    const own = judged.filter(({ stroke }) => stroke.stretch === longest);
    const n = own.length;
    if (beats < fewestBeats) {
      return [
        {
          scope: {},
          outcome: notMeasurable('no-run-long-enough', { beats: Math.round(beats), needed: fewestBeats }),
        },
      ];
    }
    const slow = own.map(({ i }) => timing.withoutHabits[i]! - timing.residual[i]!);
    const x = own.map(({ stroke }) => stroke.position);
    const meanX = x.reduce((sum, v) => sum + v, 0) / n;
    const meanY = slow.reduce((sum, v) => sum + v, 0) / n;
    const tilt =
      x.reduce((sum, v, k) => sum + (v - meanX) * slow[k]!, 0) /
      x.reduce((sum, v) => sum + (v - meanX) ** 2, 0);
    const sway = slow.map((v, k) => v - meanY - tilt * (x[k]! - meanX));
    const variance = sway.reduce((sum, v) => sum + v * v, 0) / n;
    const usual = median(timing.period.filter((period) => period !== null));
    const { played, series, models } = tempoCourse(performance, timing, usual);
    const mixture = fitTempo({ ...series, columns: [played] }, models, timing.count / 2);
    if (!mixture) return [{ scope: {}, outcome: notMeasurable('too-broken-up', { needed: fewestBeats }) }];
    const perBeat = n / beats;
    const likely = [...mixture.models].sort((a, b) => b.weight - a.weight).slice(0, likeliest);
    const total = likely.reduce((sum, { weight }) => sum + weight, 0);
    const inverse = likely.reduce(
      (sum, { model, weight }) => sum + weight / total / wanderDegrees(model, { beats, perBeat }),
      0,
    );
    // Near both ends the smooth rests on one and the same window.
    const degrees = Math.max(1, (1 - (2 * halfWindow) / beats) / inverse);
    const at = (p: number) => 1000 * Math.sqrt((degrees * variance) / chiSquareQuantile(p, degrees));
    const pointsAt = own
      .map(({ stroke }, k) => ({ at: stroke.stroke, size: comparable(Math.abs(sway[k]!)) }))
      .sort((a, b) => b.size - a.size || a.at - b.at)
      .slice(0, variance > 0 ? shown : 0)
      .map((one) => one.at);
    const figure = {
      value: 1000 * Math.sqrt(variance),
      low: at(0.975),
      high: at(0.025),
      strokes: n,
      pointsAt,
    };
    return [{ scope: {}, outcome: measured(figure) }];
  },
);
