import { defineMeasure } from './measure.ts';
import { measured, notApplicable, notMeasurable } from './outcomes.ts';
import { tempoCourse } from './tempo-course.ts';
import { fitTempo } from './tempo-fit.ts';
import { timingOrReason } from './timing-or-reason.ts';

/** Tempo of the take against the one asked for. */
export const tempoError = defineMeasure(
  {
    id: 'tempo-error',
    title: 'Tempo against the one asked for',
    unit: '%',
    better: 'near-zero',
    describes: 'How much faster (or, with a minus, slower) the take is than the tempo asked for.',
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
