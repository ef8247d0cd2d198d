import type { Hand } from '../exercise/sheet.ts';
import type { Slot } from '../exercise/slot.ts';

/** Place in the sheet relative to an accent; a tap between two accents counts as after the first. */
export type AccentPlace = 'before' | 'on' | 'after' | 'other';

/** One graded stroke with all that the sheet says of it. */
export interface PlayedStroke {
  /** Index into the strokes that were aligned. */
  readonly stroke: number;
  readonly slot: Slot;
  /** Runs without a break in tempo or a long rest are numbered from 0; local tempo never reaches across. */
  readonly stretch: number;
  /** Onset, s from the start of the recording, and its standard error. */
  readonly time: number;
  readonly timeSe: number;
  /** Level, dBFS, and its standard error, dB. */
  readonly levelDb: number;
  readonly levelSe: number;
  /** Beats from the first stroke of its stretch, repeats counted through. */
  readonly position: number;
  /** Hand as played, or null where a missed or doubled stroke has left it open. */
  readonly hand: Hand | null;
  /** Where the hand is open: number of the doubt; strokes that share it have swapped hands together or not at all. */
  readonly doubt: number | null;
  readonly place: AccentPlace;
  /** Whether the other hand played the stroke written before it; null when nothing stands right before it. */
  readonly handChange: boolean | null;
}
