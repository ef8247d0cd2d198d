import type { Outcome } from '../result/take-result.ts';
import { notMeasurable } from './outcomes.ts';
import type { Performance } from './performance.ts';
import { type BeatCount, shareOutcome } from './share-outcome.ts';
import { mostPointedAt } from './worst-strokes.ts';

/** Written strokes below which a share of them isn't told (our judgement). */
const fewestSlots = 24;

/** A fault of completeness: the slot at or before which it happened, and the stroke to listen to. */
export interface Fault {
  readonly slot: number;
  readonly stroke: number;
}

/** Missed slots of graded segments, each heard from the stroke played before it (or after, at the very start). */
export function missedFaults({ slots, strokes, alignment }: Performance): Fault[] {
  return alignment.missed
    .filter((slot) => slots[slot]!.grace === false)
    .flatMap((slot) => {
      const before = strokes.findLast((s) => s.slot.index < slot) ?? strokes[0];
      return before ? [{ slot, stroke: before.stroke }] : [];
    });
}

/** Surplus strokes inside graded segments, each put on the slot played last before it. */
export function surplusFaults(
  { strokes, alignment, times }: Performance,
  surplus: readonly number[],
): Fault[] {
  const spans = new Map<number, { from: number; to: number }>();
  for (const match of alignment.matches) {
    if (alignment.segments[match.segment]!.state !== 'graded') continue;
    const time = times[match.stroke]!;
    const span = spans.get(match.segment);
    spans.set(match.segment, { from: span?.from ?? time, to: time });
  }
  // A bounce after the last stroke of a run belongs to it as well.
  const lastBounce = 0.25;
  return surplus.flatMap((stroke) => {
    const time = times[stroke]!;
    const inside = [...spans.values()].some(({ from, to }) => time > from && time < to + lastBounce);
    const before = inside ? strokes.findLast((s) => s.time < time) : undefined;
    return before ? [{ slot: before.slot.index, stroke }] : [];
  });
}

/** Faults as a share of the written strokes of the graded part, per cent; grace notes aren't counted. */
export function shareOfSlots({ slots, alignment, strokes }: Performance, faults: readonly Fault[]): Outcome {
  const beats = new Map<string, BeatCount>();
  const seen = new Set<number>();
  const keyOf = (slot: number) => `${slots[slot]!.line}:${Math.floor(slots[slot]!.beatTime + 1e-6)}`;
  for (const segment of alignment.segments) {
    if (segment.state !== 'graded') continue;
    for (let slot = segment.firstSlot; slot <= segment.lastSlot; slot++) {
      if (slots[slot]!.grace || seen.has(slot)) continue;
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
