import type { Stroke } from '../onsets/stroke.ts';
import type { Stretch } from '../signal/cut-source.ts';

/** A silence of the pad this long parts two stretches, s; a page turn inside a take is shorter (our judgement). */
const parting = 5;
/** Fewer strokes than this in a row are no playing: two beats of triplets (our judgement). */
const fewest = 6;

/** The stretches in which the pad is struck again and again, from their first to their last stroke, in order. */
export function playingStretches(sounds: readonly Stroke[]): Stretch[] {
  const times = sounds.filter(({ sound }) => sound === 'pad').map(({ time }) => time);
  const stretches: Stretch[] = [];
  let first = 0;
  for (let i = 1; i <= times.length; i++) {
    if (i < times.length && times[i]! - times[i - 1]! < parting) continue;
    if (i - first >= fewest) stretches.push({ from: times[first]!, to: times[i - 1]! });
    first = i;
  }
  return stretches;
}
