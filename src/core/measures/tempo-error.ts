import { defineMeasure } from './measure.ts';
import { measured, notApplicable, notMeasurable } from './outcomes.ts';
import { tempoCourse } from './tempo-course.ts';
import { fitTempo, tempoInterval } from './tempo-fit.ts';
import { timingOrReason } from './timing-or-reason.ts';

/** Tempo of the take against the one asked for. */
export const tempoError = defineMeasure(
  {
    id: 'tempo-error',
    title: 'Tempo against asked',
    unit: '%',
    better: 'near-zero',
    describes: 'How much faster (or, with a minus, slower) the take is than the tempo asked for.',
    formula:
      '100 · (1 / (1 + b / h) − 1); b: slope of (onset − asked time) over the take, time from −1 to 1; h: half the asked time',
    interval: tempoInterval,
    reading:
      'Near zero: the tempo asked for was held. Plus: too fast. A take that runs fast at every tempo asks for a slower start, one that runs fast only at the end for fewer repeats.',
    limits: [
      "Without a click it is the steady tempo behind the wander, so a short take's range is wide.",
      'At 48 strokes to a click, slow corrections pass for drift, and the range holds a little less often than it says.',
      'A recorder whose clock is off shifts it by a small share.',
    ],
    reasons: ['too-few-strokes', 'too-broken-up', 'no-tempo-asked'],
    source:
      'Regression with wander by Kalman filter (Harvey 1989), averaged over models; a change of 1.5 to 3 % is just audible (Drake & Botte 1993).',
  },
  (performance) => {
    const lines = [...new Set(performance.strokes.map((s) => s.slot.line))];
    if (lines.some((line) => performance.sheet.lines[line]!.bpm === null)) {
      return [{ scope: {}, outcome: notApplicable('no-tempo-asked') }];
    }
    const found = timingOrReason(performance);
    if ('refusal' in found) return [{ scope: {}, outcome: found.refusal }];
    const { count } = found.timing;
    const { played, half, series, models } = tempoCourse(performance, found.timing, 1);
    const mixture = fitTempo({ ...series, columns: [played] }, models, count / 2);
    if (!mixture) return [{ scope: {}, outcome: notMeasurable('too-broken-up', { needed: count }) }];
    const faster = (slower: number) => 100 * (1 / (1 + slower / half) - 1);
    const outcome = measured({
      value: faster(mixture.mean),
      low: faster(mixture.quantile(0.975)),
      high: faster(mixture.quantile(0.025)),
      strokes: count,
    });
    return [{ scope: {}, outcome }];
  },
);
