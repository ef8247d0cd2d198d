import type { Beat, Hand } from './sheet.ts';

/** The other hand. */
export const otherHand = (hand: Hand): Hand => (hand === 'R' ? 'L' : 'R');

/** The same beats led by the other hand: every right is a left and every left a right, grace notes too. */
export function swapHands(beats: readonly Beat[]): readonly Beat[] {
  return beats.map((beat) => ({
    ...beat,
    partials: beat.partials.map(
      (note) => note && { ...note, hand: otherHand(note.hand), grace: note.grace.map(otherHand) },
    ),
  }));
}
