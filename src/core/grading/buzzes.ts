import { type AlignQuestion, alignTake } from '../alignment/align-take.ts';
import type { Alignment } from '../alignment/alignment.ts';
import type { Stroke } from '../onsets/stroke.ts';

/** A take in which every buzz is one stroke. */
interface Played {
  readonly strokes: readonly Stroke[];
  readonly laid: Alignment;
}

/** The bounces of buzzes, by place in the strokes: all between a buzz and the stroke after it, until that is due. */
function bouncesOf({ slots, strokes }: AlignQuestion, { matches, segments }: Alignment): ReadonlySet<number> {
  const onSlot = new Set(matches.map(({ stroke }) => stroke));
  const bounces = new Set<number>();
  for (const { slot, stroke, segment } of matches) {
    const { buzz, beatTime, line } = slots[slot]!;
    if (!buzz) continue;
    let next = slot + 1;
    while (slots[next]?.grace) next++;
    const beats = slots[next]?.line === line ? slots[next]!.beatTime - beatTime : 1;
    const end = strokes[stroke]!.time + beats * segments[segment]!.period;
    for (let i = stroke + 1; i < strokes.length && strokes[i]!.time < end && !onSlot.has(i); i++)
      bounces.add(i);
  }
  return bounces;
}

/**
 * Takes the bounces of written buzzes for part of them: a buzz counts as the stroke that begins it. Laid with strokes
 * between coming cheap first, since a buzz has more bounces than there are strokes. A sheet without buzzes comes back as
 * it was laid.
 *
 * @example buzzesAsOne(question, alignTake(question)).strokes.length // 36 for a sheet of 36 strokes, buzzes among them
 */
export function buzzesAsOne(question: AlignQuestion, laid: Alignment): Played {
  const { slots, strokes } = question;
  if (!slots.some(({ buzz }) => buzz)) return { strokes, laid };
  const bounces = bouncesOf(question, alignTake({ ...question, inCompany: true }));
  const begun = strokes.filter((_, i) => !bounces.has(i));
  return { strokes: begun, laid: alignTake({ ...question, strokes: begun }) };
}
