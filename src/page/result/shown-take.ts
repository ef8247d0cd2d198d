import type { TakeResult } from '../../core/result/take-result.ts';
import type { TakeSound } from '../engine/engine-messages.ts';
import { goTo } from '../shell/route.ts';

/** A take to look at: its result, and its sound where there is one. */
export interface ShownTake {
  readonly result: TakeResult;
  readonly sound: TakeSound | null;
  /** Its id in the library, once it is kept. */
  readonly id?: string;
  /** The exercise as text, to practise it again. */
  readonly sheetText?: string;
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
