import type { Scope } from '../result/take-result.ts';
import { inScopes } from './in-scopes.ts';
import { defineMeasure, type Part } from './measure.ts';
import { notMeasurable } from './outcomes.ts';
import { placeOfStroke } from './part-of-take.ts';
import { type PartVariance, partVariances } from './part-variances.ts';
import { type PartKind, scopesOf } from './scopes.ts';
import { spreadInterval, spreadOutcome } from './spread-outcome.ts';
import { timingOrReason } from './timing-or-reason.ts';
import { fewestTimed } from './timing-strays.ts';
import { windowScatter } from './window-scatter.ts';
import { worstStrokes } from './worst-strokes.ts';

/** Scatter round the local tempo, habits taken out; for each part of the take its share of the whole. */
export const timingSpread = defineMeasure(
  {
    id: 'timing-spread',
    title: 'Timing spread',
    unit: 'ms',
    better: 'low',
    describes:
      'How far strokes scatter round the tempo of the moment, once the lasting habits of partials and hands are taken out.',
    formula:
      'sqrt( S / F / (1 − 1.1 p / N) / k − e² ); S: sum of squared distances from the straight line through each full window of four beats, habits taken out; F: sum of (strokes − 2) over the windows; p: habits fitted to all N strokes; k: share of the variance that leaving out strays keeps; e: error of finding a stroke; a part of the take by its share of S, a hand or partial without what the others put into its lines',
    interval: spreadInterval,
    reading:
      'Low: the strokes lie where the beat of the moment puts them. High: slow down until it falls, then raise the tempo again. Read the share of a partial beside it: the same milliseconds weigh more in a fast line.',
    limits: [
      'It says nothing of lasting habits: a partial that is always late has a figure of its own.',
      'A few wild strokes make its range too narrow.',
      'For a line, a repeat, a hand or a partial it uses the habits of the whole take.',
    ],
    reasons: ['too-few-strokes', 'too-broken-up', 'found-too-coarsely'],
    source:
      'Standard deviation round a straight line over four beats, chi-square interval; a displacement of 6 ms is just audible below 240 ms between strokes, 2.5 % above (Friberg & Sundberg 1995).',
  },
  (performance) => {
    const found = timingOrReason(performance);
    if ('refusal' in found) return [{ scope: {}, outcome: found.refusal }];
    const { timing } = found;
    const whole = windowScatter(timing);
    const played = performance.strokes.map((stroke, i) => ({ stroke, i }));
    const partOf = (scope: Scope, own: readonly (typeof played)[number][], apart: PartVariance): Part => {
      const part = own.filter(({ i }) => timing.judged[i] === 1);
      if (part.length < fewestTimed / 2) {
        return {
          scope,
          outcome: notMeasurable('too-few-strokes', { strokes: part.length, needed: fewestTimed / 2 }),
        };
      }
      const variance = whole.variance * apart.relative;
      const outcome = spreadOutcome({
        variance,
        errorVariance: part.reduce((sum, { stroke }) => sum + stroke.timeSe ** 2, 0) / part.length,
        degrees: Math.max(3, (apart.degrees * whole.degrees * part.length) / timing.count),
        perUnit: 1000,
        unit: 'ms',
        strokes: part.length,
        pointsAt: worstStrokes(
          own.map(({ stroke }) => stroke),
          (_, n) => Math.abs(timing.scaledResidual[own[n]!.i]!) - 2 * Math.sqrt(variance),
        ),
      });
      return { scope, outcome };
    };
    const parts = (kind: PartKind) => {
      const scopes = scopesOf(performance, kind);
      const own = inScopes(scopes, played, ({ stroke }) => placeOfStroke(stroke));
      const indices = own.map((part) => part.map(({ i }) => i));
      const interleaved = kind === 'hand' || kind === 'partial';
      const variances = partVariances(timing, indices, { interleaved });
      return scopes.map((scope, n) => partOf(scope, own[n]!, variances[n]!));
    };
    const repeats = parts('repeat').filter(({ outcome }) => outcome.state === 'measured');
    return [
      partOf({}, played, { relative: 1, degrees: 1 }),
      ...parts('hand'),
      ...parts('line'),
      ...repeats,
      ...parts('partial'),
    ];
  },
);
