import type { Outcome } from '../result/take-result.ts';
import { firstAtLeast } from '../stats/first-at-least.ts';
import { beatOfSlot } from './beat-of.ts';
import { notMeasurable } from './outcomes.ts';
import type { Performance } from './performance.ts';
import { type BeatCount, shareOutcome } from './share-outcome.ts';
import { mostPointedAt } from './worst-strokes.ts';

/** Written strokes below which a share of them isn't told (our judgement). */
const fewestSlots = 24;

/** A fault of completeness: the slot at or before which it happened, and the stroke to listen to. */
interface Fault {
  readonly slot: number;
  readonly stroke: number;
}

/** Missed slots of graded segments, each heard from the stroke played before it (or after, at the very start). */
export function missedFaults({ asked, strokes, alignment }: Performance): Fault[] {
  const own = new Set(asked.filter((slot) => !slot.grace).map((slot) => slot.index));
  return alignment.missed
    .filter((slot) => own.has(slot))
    .flatMap((slot) => {
      const before = strokes.findLast((s) => s.slot.index < slot) ?? strokes[0];
      return before ? [{ slot, stroke: before.stroke }] : [];
    });
}

interface GradedMatches {
  readonly slots: Performance['slots'];
  readonly times: readonly number[];
  /** Matches of main slots in graded segments, in order of time, and the time of each segment's last. */
  readonly played: Performance['alignment']['matches'];
  readonly ends: ReadonlyMap<number, number>;
}

/** Asked for by every part of a take: gathered once for its alignment. */
const gathered = new WeakMap<Performance['alignment'], GradedMatches>();

function gradedMatches(
  alignment: Performance['alignment'],
  slots: Performance['slots'],
  times: readonly number[],
): GradedMatches {
  const known = gathered.get(alignment);
  if (known?.slots === slots && known.times === times) return known;
  const played = alignment.matches.filter(
    ({ segment, slot }) => alignment.segments[segment]!.state === 'graded' && !slots[slot]!.grace,
  );
  const ends = new Map(played.map(({ segment, stroke }) => [segment, times[stroke]!]));
  const found = { slots, times, played, ends };
  gathered.set(alignment, found);
  return found;
}

/** The last match that lies before a time. */
function lastBefore(played: GradedMatches['played'], times: readonly number[], time: number) {
  return played[firstAtLeast(played, time, ({ stroke }) => times[stroke]!) - 1];
}

/** Surplus strokes inside graded segments, each put on the slot played last before it. */
export function surplusFaults(
  { asked, alignment, times, slots }: Performance,
  surplus: readonly number[],
): Fault[] {
  if (surplus.length === 0) return [];
  const own = new Set(asked.map((slot) => slot.index));
  const { played, ends } = gradedMatches(alignment, slots, times);
  // A bounce after the last stroke of a run belongs to it as well.
  const lastBounce = 0.25;
  return surplus.flatMap((stroke) => {
    const time = times[stroke]!;
    const before = lastBefore(played, times, time);
    if (!before || !own.has(before.slot) || time > ends.get(before.segment)! + lastBounce) return [];
    return [{ slot: before.slot, stroke }];
  });
}

/** Faults as a share of the written strokes of the graded part, per cent; grace notes aren't counted. */
export function shareOfSlots(
  { slots, asked, alignment, strokes }: Performance,
  faults: readonly Fault[],
): Outcome {
  const beats = new Map<string, BeatCount>();
  const seen = new Set<number>();
  const unheard = new Set(alignment.unheard);
  const own = asked.filter((slot) => !slot.grace && !unheard.has(slot.index)).map((slot) => slot.index);
  const keyOf = (slot: number) => beatOfSlot(slots[slot]!);
  for (const segment of alignment.segments) {
    if (segment.state !== 'graded') continue;
    for (let i = firstAtLeast(own, segment.firstSlot); i < own.length && own[i]! <= segment.lastSlot; i++) {
      const slot = own[i]!;
      if (seen.has(slot)) continue;
      seen.add(slot);
      const beat = beats.get(keyOf(slot)) ?? { hits: 0, of: 0 };
      beats.set(keyOf(slot), { ...beat, of: beat.of + 1 });
    }
  }
  if (seen.size < fewestSlots || strokes.length === 0) {
    return notMeasurable('too-few-strokes', { strokes: strokes.length, needed: fewestSlots });
  }
  for (const { slot } of faults) {
    const beat = beats.get(keyOf(slot));
    if (beat) beats.set(keyOf(slot), { ...beat, hits: beat.hits + 1 });
  }
  const pointsAt = [...new Set(faults.map((fault) => fault.stroke))].slice(0, mostPointedAt);
  return shareOutcome([...beats.values()], seen.size, pointsAt);
}
