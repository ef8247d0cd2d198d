import type { Hand } from './sheet.ts';

/** One expected stroke. Counts of line, repeat, bar and beat start at 0, the partial at 1 as drummers count. */
export interface Slot {
  /** Place in the laid-out sheet's list of slots. */
  readonly index: number;
  readonly line: number;
  readonly repeat: number;
  /** Bar within the repeat. */
  readonly bar: number;
  /** Beat within the repeat. */
  readonly beat: number;
  /** 1 … divisions. */
  readonly partial: number;
  /** Equal parts of this beat. */
  readonly divisions: number;
  readonly hand: Hand;
  readonly accent: boolean;
  /** A grace note: expected just before the next slot that is not a grace note. */
  readonly grace: boolean;
  readonly buzz: boolean;
  /** Beats from the first beat of this repeat; a grace note carries its main stroke's. */
  readonly position: number;
  /** Beats from the first beat of the sheet, rest beats counted; grace notes as above. */
  readonly beatTime: number;
  /** Seconds from the first beat of the sheet at the tempos asked for; null when a tempo up to here is open. */
  readonly time: number | null;
}
