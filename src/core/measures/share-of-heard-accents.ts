import type { Outcome } from '../result/take-result.ts';
import { beatOf } from './beat-of.ts';
import { type HeardAccents, heardAccents } from './heard-accents.ts';
import { notMeasurable } from './outcomes.ts';
import type { Performance } from './performance.ts';
import type { PlayedStroke } from './played-stroke.ts';
import { type BeatCount, shareOutcome } from './share-outcome.ts';
import { mostPointedAt } from './worst-strokes.ts';

type Judge = (stroke: PlayedStroke, index: number, accents: HeardAccents) => boolean;

/** Where the figures on single accents come from. */
export const heardAccentsSource =
  'Two normal levels by expectation–maximisation (Dempster, Laird & Rubin 1977), odds of 3 to 1 for the other one (our judgement); Wilson 1927 with a design effect.';

/** Share of some strokes that are a certain thing, %, pointing at them. */
export function shareOfHeardAccents(
  performance: Performance,
  { of, hit, pointAt = hit }: { readonly of: Judge; readonly hit: Judge; readonly pointAt?: Judge },
): Outcome {
  const found = heardAccents(performance);
  if ('refusal' in found) return found.refusal;
  const beats = new Map<string, BeatCount>();
  const pointsAt: number[] = [];
  let count = 0;
  performance.strokes.forEach((stroke, i) => {
    if (pointAt(stroke, i, found.accents)) pointsAt.push(stroke.stroke);
    if (!of(stroke, i, found.accents)) return;
    count++;
    const { hits, of: chances } = beats.get(beatOf(stroke)) ?? { hits: 0, of: 0 };
    const more = hit(stroke, i, found.accents) ? 1 : 0;
    beats.set(beatOf(stroke), { hits: hits + more, of: chances + 1 });
  });
  if (count === 0) return notMeasurable('accents-all-turned');
  return shareOutcome([...beats.values()], count, pointsAt.slice(0, mostPointedAt));
}
