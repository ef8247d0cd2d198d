import type { TakeResult } from '../../core/result/take-result.ts';
import type { TakeSound } from '../engine/engine-messages.ts';
import { goTo } from '../shell/route.ts';

/** A take to look at. */
export interface ShownTake {
  readonly result: TakeResult;
  readonly sound: TakeSound | null;
  /** Its id in the library, or the promise of one while it is being kept; null for one that isn't kept. */
  readonly kept: Promise<string | null>;
  /** Why it isn't kept, if that went wrong. */
  readonly fault?: Promise<string | null>;
  /** The player wants to guess before the figures are shown. */
  readonly guessFirst: boolean;
}

let shown: ShownTake | null = null;
const listeners = new Set<() => void>();

/** The take that the result view shows. */
export const shownTake = (): ShownTake | null => shown;

/** Shows a take in the result view. */
export function showTake(take: ShownTake): void {
  shown = take;
  for (const tell of listeners) tell();
  goTo('result');
}

export function onShownTake(tell: () => void): () => void {
  listeners.add(tell);
  return () => listeners.delete(tell);
}
