import { sittingMs } from './compare-with-kept.ts';
import type { ListenedHand } from './hear-hand.ts';

export type HandName = 'right' | 'left';

/** A hand that was listened to, and when that began, ms since 1970. */
export type HandAt = ListenedHand & { readonly at: number };

/** What was heard of each hand for one reference; null for a hand that hasn't been played. */
export interface HandsOfReference {
  readonly right: HandAt | null;
  readonly left: HandAt | null;
}

export const noHands: HandsOfReference = { right: null, left: null };

/** A hand that is as it should be. */
const isHeard = (hand: HandAt | null) => hand?.heard.state === 'heard';

/**
 * What still counts of a reference when a hand is about to be played: the other one, where it was played just now and
 * isn't part of a whole reference yet. Two hands of two sittings tell nothing of one microphone.
 *
 * @example handsBefore({ right, left }, 'right', now) // { right: null, left: null } where both were heard
 */
export function handsBefore(hands: HandsOfReference, hand: HandName, now: number): HandsOfReference {
  const other = hand === 'right' ? 'left' : 'right';
  const whole = isHeard(hands.right) && isHeard(hands.left);
  const kept = hands[other];
  return whole || kept === null || now - kept.at > sittingMs ? noHands : { ...noHands, [other]: kept };
}

/** The hand that is wanted next for a reference of which one hand was heard; null where neither or both were. */
export function handWanted({ right, left }: HandsOfReference): HandName | null {
  if (isHeard(right) === isHeard(left)) return null;
  return isHeard(right) ? 'left' : 'right';
}
