import type { Alignment, Segment } from '../alignment/alignment.ts';
import type { Slot } from '../exercise/slot.ts';
import { extent } from '../stats/extent.ts';

/** A take whose hands are told for a smaller share of its strokes says nothing of hands (our judgement). */
export const leastShareTold = 0.5;

/** Lines in which every stroke, the turn into the next repeat included, changes hands. */
function handToHandLines(slots: readonly Slot[]): ReadonlySet<number> {
  const broken = new Set<number>();
  const lines = new Set<number>();
  slots.forEach((slot, i) => {
    lines.add(slot.line);
    const before = slots[i - 1];
    if (before?.line === slot.line && before.hand === slot.hand) broken.add(slot.line);
  });
  return new Set([...lines].filter((line) => !broken.has(line)));
}

/**
 * Slots whose hand can't be told. In a hand-to-hand line a stroke that is missed may have been left out by the hands
 * too, one that sounds twice may have taken both hands, and after a slip by a partial the hands may have gone on
 * alternating or as written: from there on they may have changed places, up to the next line or until playing begins
 * anew. In other stickings the doubles give the swap away, so hands stay as written.
 * The value numbers the doubts: strokes with the same number have swapped hands together or not at all.
 */
export function slotsWithoutHand({
  slots,
  times,
  alignment,
}: {
  readonly slots: readonly Slot[];
  /** Onsets of the strokes that were aligned, s. */
  readonly times: readonly number[];
  readonly alignment: Alignment;
}): ReadonlyMap<number, number> {
  const main = slots.filter((slot) => !slot.grace);
  const handToHand = handToHandLines(main);
  const open = new Map<number, number>();
  let doubts = 0;
  const missed = new Set(alignment.missed);
  const surplus = [...alignment.doubled, ...alignment.extra]
    .map((stroke) => times[stroke]!)
    .sort((a, b) => a - b);
  /** Line in which the hands were open when the segment before ended, or −1. */
  let leftOpen = -1;
  alignment.segments.forEach((segment: Segment, index) => {
    const slipped = segment.began === 'slip';
    const opened = slipped ? slots[segment.firstSlot]!.line : segment.began === 'on' ? leftOpen : -1;
    leftOpen = opened;
    if (segment.state !== 'graded') return;
    const timeOf = new Map(
      alignment.matches.filter((m) => m.segment === index).map((m) => [m.slot, times[m.stroke]!]),
    );
    const { least: from, most: to } = extent(timeOf.values());
    const inside = surplus.filter((time) => time > from && time < to);
    let line = -1;
    let lineFrom = from;
    let told = true;
    let surplusSeen = 0;
    for (const slot of main) {
      if (slot.index < segment.firstSlot || slot.index > segment.lastSlot) continue;
      const time = timeOf.get(slot.index);
      if (slot.line !== line) {
        line = slot.line;
        told = !(handToHand.has(line) && opened === line);
        if (!told) doubts++;
        lineFrom = time ?? lineFrom;
        surplusSeen = 0;
      }
      const surplusNow =
        time === undefined ? surplusSeen : inside.filter((at) => at > lineFrom && at < time).length;
      if (handToHand.has(line) && (missed.has(slot.index) || surplusNow > surplusSeen)) {
        told = false;
        doubts++;
      }
      surplusSeen = surplusNow;
      if (!told) open.set(slot.index, doubts);
    }
    leftOpen = told ? -1 : line;
  });
  return open;
}
