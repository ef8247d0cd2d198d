import type { Slot } from '../exercise/slot.ts';
import type { PlayedStroke } from './played-stroke.ts';

/** Number of the beat a stroke lies in, the same for the strokes of one beat of one stretch and no others. */
export function beatOf({ slot, stretch }: Pick<PlayedStroke, 'slot' | 'stretch'>): string {
  return `${stretch}:${Math.floor(slot.beatTime + 1e-6)}`;
}

/** The same of a written slot: the same for the slots of one beat of one line and no others. */
export function beatOfSlot({ line, beatTime }: Pick<Slot, 'line' | 'beatTime'>): string {
  return `${line}:${Math.floor(beatTime + 1e-6)}`;
}

/** Sums of a quantity over the beats of a list of strokes, in order. */
export function sumsByBeat(
  strokes: readonly PlayedStroke[],
  quantity: (stroke: PlayedStroke, index: number) => number,
): number[] {
  const sums = new Map<string, number>();
  strokes.forEach((stroke, i) => {
    const beat = beatOf(stroke);
    sums.set(beat, (sums.get(beat) ?? 0) + quantity(stroke, i));
  });
  return [...sums.values()];
}

/**
 * Sum of the squared Bartlett weights of lags −1, 0 and 1, ¼ + 1 + ¼: a variance of beats' sums so weighted has as many
 * times fewer degrees of freedom (Priestley 1981, quoted from memory).
 */
export const squaredBartlettWeights = 1.5;
