import { type AlignQuestion, alignTake } from '../alignment/align-take.ts';
import type { Alignment } from '../alignment/alignment.ts';
import { distanceFrom, findPadSound, type Sounding } from '../onsets/pad-sound.ts';
import type { Stroke } from '../onsets/stroke.ts';
import { anyBetween } from '../stats/any-between.ts';
import { median } from '../stats/median.ts';

/** Strokes on no slot, and slots without a stroke, from which on others may be heard; shares of either. Our judgement. */
const suspicious = 0.15;
/** Slots that must be won by allowing for others, and those that may be missed then; shares. Our judgement. */
const won = 0.15;
const mostMissed = 0.15;
/**
 * How much better strokes between fit a sound of their own than that of strokes on slots, in scatters. Of rendered takes the
 * middle one of a player's own extra strokes and bounces comes to 0.3 at most, of somebody else's on another drum to 0.4 and
 * more, mostly beyond 0.8. A single stroke is somebody else's from `each` on.
 */
const better = { middle: 0.38, each: 0.2 };
/** On a slot, a stroke is taken for another's only where one of the player's lies within so many seconds. */
const instead = 0.08;

/** So large a share of strokes on no slot makes it worth to look for others though every slot has a stroke. Our judgement. */
const thick = 0.25;

/** A take of which others' strokes were left out. */
interface Apart {
  readonly strokes: readonly Stroke[];
  readonly laid: Alignment;
  /** Strokes left out as somebody else's. */
  readonly others: readonly Stroke[];
}

/** Strokes on no slot. */
const beside = ({ extra, doubled, outside }: Alignment) => extra.length + doubled.length + outside.length;

/** Main slots with a stroke of a graded run. */
function filled({ segments, matches }: Alignment, { slots }: AlignQuestion): number {
  const isGrace = new Set(slots.filter(({ grace }) => grace).map(({ index }) => index));
  return matches.filter(({ segment, slot }) => segments[segment]!.state === 'graded' && !isGrace.has(slot))
    .length;
}

/**
 * The alignment of a take in which others may be heard playing: their strokes come between the player's, so that laid as
 * one player's strokes most belong to no run. Where many strokes and many slots are left over, the take is laid once more
 * with strokes between coming cheap; taken only where that fills the sheet.
 */
function laidInCompany(question: AlignQuestion, laid: Alignment): Alignment {
  const { slots, strokes } = question;
  const main = slots.filter(({ grace }) => !grace).length;
  const before = filled(laid, question);
  if (beside(laid) < suspicious * strokes.length || main - before < suspicious * main) return laid;
  const again = alignTake({ ...question, inCompany: true });
  const after = filled(again, question);
  const isFilled = after - before >= won * main && again.missed.length <= mostMissed * after;
  return isFilled ? again : laid;
}

/** Which strokes are somebody else's by their sound; null where nobody else is heard. */
function strangersOf({ strokes }: AlignQuestion, laid: Alignment): ReadonlySet<number> | null {
  const sounding = (places: readonly number[]) =>
    places.flatMap((i) => (strokes[i]!.timbre === null ? [] : [strokes[i] as Sounding]));
  const between = [...laid.extra, ...laid.doubled];
  const onSlots = laid.matches.map(({ stroke }) => stroke);
  const [own, other] = [findPadSound(sounding(onSlots)), findPadSound(sounding(between))];
  if (own === null || other === null) return null;
  const fitsOther = strokes.map((stroke) =>
    stroke.timbre === null
      ? Number.NEGATIVE_INFINITY
      : distanceFrom(own, stroke as Sounding) - distanceFrom(other, stroke as Sounding),
  );
  if (median(between.map((i) => fitsOther[i]!)) < better.middle) return null;
  const ofPlayer = strokes.flatMap(({ time }, i) => (fitsOther[i]! < 0 ? [time] : []));
  const isOnSlot = new Set(onSlots);
  return new Set(
    strokes.flatMap(({ time }, i) =>
      fitsOther[i]! > better.each &&
      (!isOnSlot.has(i) || anyBetween(ofPlayer, time - instead, time + instead))
        ? [i]
        : [],
    ),
  );
}

/**
 * Tells a player's strokes from those of others who play in the same room: the player's lie on the sheet and sound alike.
 * A take of one player comes back as it was laid.
 *
 * @example apartFromOthers(question, alignTake(question)).others // []
 */
export function apartFromOthers(question: AlignQuestion, laid: Alignment): Apart {
  const { strokes } = question;
  const alignment = laidInCompany(question, laid);
  let strangers = strangersOf(question, alignment);
  // Where strokes lie thick, others' may have filled the sheet in place of the player's.
  if (strangers === null && beside(alignment) >= thick * strokes.length)
    strangers = strangersOf(question, alignTake({ ...question, inCompany: true }));
  if (strangers === null) return { strokes, laid: alignment, others: [] };
  const own = strokes.filter((_, i) => !strangers.has(i));
  const again = alignTake({ ...question, strokes: own, inCompany: true });
  return { strokes: own, laid: again, others: strokes.filter((_, i) => strangers.has(i)) };
}
