import type { Slot } from '../exercise/slot.ts';

/** Slots further apart than this many of the wider partials have a rest between them: half way from next to next but one. */
const adjacent = 1.5;

/**
 * Whether no rest stands between two slots so many beats apart.
 *
 * @example areAdjacent(firstOfTriplet, secondOfTriplet, 1 / 3) // true
 */
export function areAdjacent(
  one: Pick<Slot, 'divisions'>,
  other: Pick<Slot, 'divisions'>,
  gapBeats: number,
): boolean {
  return gapBeats * Math.min(one.divisions, other.divisions) <= adjacent;
}
