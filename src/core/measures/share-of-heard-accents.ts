import type { Outcome } from '../result/take-result.ts';
import { beatOf } from './beat-of.ts';
import type { HeardAs } from './heard-accents.ts';
import { notMeasurable } from './outcomes.ts';
import type { Performance } from './performance.ts';
import type { PlayedStroke } from './played-stroke.ts';
import { type BeatCount, shareOutcome } from './share-outcome.ts';
import { mostPointedAt } from './worst-strokes.ts';

/** Where the figures on single accents come from. */
export const heardAccentsSource =
  'Two normal levels by expectation–maximisation (Dempster, Laird & Rubin 1977); a level that under 1 % of its own kind have, with odds of 3 to 1 for the other one: our judgement; Wilson 1927 with a design effect.';

/** Share of some strokes that are hit, %, pointing at some. */
export function shareOfStrokes(
  strokes: readonly PlayedStroke[],
  isHit: (stroke: PlayedStroke) => boolean,
  pointsAt: readonly number[],
): Outcome {
  if (strokes.length === 0) return notMeasurable('accents-all-turned');
  const beats = new Map<string, BeatCount>();
  for (const stroke of strokes) {
    const { hits, of } = beats.get(beatOf(stroke)) ?? { hits: 0, of: 0 };
    beats.set(beatOf(stroke), { hits: hits + (isHit(stroke) ? 1 : 0), of: of + 1 });
  }
  return shareOutcome([...beats.values()], strokes.length, pointsAt.slice(0, mostPointedAt));
}

/** Share of written accents (or of taps) that sounded in a certain way, %; turned runs are left to their own figure. */
export function shareOfHeardAccents(
  { accents: found, strokes }: Performance,
  { accents, heardAs }: { readonly accents: boolean; readonly heardAs: HeardAs },
): Outcome {
  if ('refusal' in found) return found.refusal;
  const { single, offSlots } = found.accents;
  if ('refusal' in single) return single.refusal;
  const isHit = ({ stroke }: PlayedStroke) => single.heardAs.get(stroke) === heardAs;
  const own = strokes.filter(({ slot, stroke }) => slot.accent === accents && !offSlots.has(stroke));
  return shareOfStrokes(
    own,
    isHit,
    own.filter(isHit).map(({ stroke }) => stroke),
  );
}
