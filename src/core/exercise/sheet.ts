import type { Assigned } from './sheet-headings.ts';

export type Hand = 'R' | 'L';

/** A band of decibels between which the accent-to-tap ratio should lie. */
export interface RatioBand {
  readonly minDb: number;
  readonly maxDb: number;
}

/** One line of a sheet: an exercise and how often, how fast and with what pause after it. */
export interface SheetLine {
  /** The catalogue's id, or one made from the notation. */
  readonly id: string;
  /** Name shown to people; untrusted text. */
  readonly label: string;
  readonly notation: string;
  readonly beats: readonly Beat[];
  readonly repeats: number;
  /** Beats per minute asked for, or null when the tempo is to be found in the take. */
  readonly bpm: number | null;
  readonly beatsInBar: number;
  /** Beats of rest after the line's last repeat. */
  readonly restBeats: number;
  /** Hands change over on every second repeat. */
  readonly leadChange: boolean;
  readonly ratioBand: RatioBand | null;
}

/** One beat of notation, divided into equal partials; null is a rest. */
export interface Beat {
  readonly partials: readonly (Note | null)[];
  /** A bar line stands before this beat in the notation. */
  readonly barBefore: boolean;
}

/** One written stroke with the grace notes before it. */
export interface Note {
  readonly hand: Hand;
  readonly accent: boolean;
  readonly buzz: boolean;
  /** Hands of the grace notes, in playing order: one for a flam, two for a drag. */
  readonly grace: readonly Hand[];
}

/** What the player was asked to play, line after line. */
export interface Sheet {
  /** Untrusted text. */
  readonly title: string;
  readonly lines: readonly SheetLine[];
  /** For whom and until when; absent where the sheet doesn't say. */
  readonly assigned?: Assigned;
}
