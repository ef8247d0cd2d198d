import type { Slot } from '../exercise/slot.ts';
import { areAdjacent } from './adjacent-slots.ts';

/** For each main slot how many strokes the same hand is written right before it, by slot index. */
export function placeInRow(slots: readonly Slot[]): ReadonlyMap<number, number> {
  const places = new Map<number, number>();
  let before: Slot | null = null;
  for (const slot of slots) {
    if (slot.grace) continue;
    const goesOn =
      before !== null &&
      before.hand === slot.hand &&
      areAdjacent(before, slot, slot.beatTime - before.beatTime);
    places.set(slot.index, goesOn ? places.get(before!.index)! + 1 : 0);
    before = slot;
  }
  return places;
}
