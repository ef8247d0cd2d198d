import type { Hand } from '../../core/exercise/sheet.ts';

/** One stroke or rest of a score, in quarters from the start of its bar. */
export interface ScoreEvent {
  readonly at: number;
  readonly stroke: {
    /** Null where the score doesn't say. */
    readonly hand: Hand | null;
    readonly accent: boolean;
    readonly buzz: boolean;
    readonly grace: readonly (Hand | null)[];
  } | null;
}

export interface ScoreBar {
  readonly events: readonly ScoreEvent[];
  /** Length in quarters. */
  readonly quarters: number;
  /** Quarters of a beat: 1 in 4/4, 1.5 in 12/8, 2 in 2/2. */
  readonly beatQuarters: number;
  /** Quarters a minute from here on, where the score says so. */
  readonly tempo: number | null;
  /** A rehearsal mark or a forward repeat sign: something new begins. */
  readonly begins: boolean;
  readonly words: readonly string[];
  /** Times that the part before a backward repeat sign at the end of the bar is played; null without one. */
  readonly times: number | null;
  /** A double or final bar line at its end. */
  readonly ends: boolean;
}

/** What a reader left out of a score, to be told. */
export type ScoreNote =
  | { readonly code: 'score-other-parts'; readonly facts: { readonly parts: number } }
  | { readonly code: 'score-other-voices'; readonly facts: { readonly voices: number } }
  | { readonly code: 'score-chords'; readonly facts: { readonly notes: number } }
  | { readonly code: 'score-sticking-added'; readonly facts: { readonly strokes: number } };

export type ScoreFault =
  | { readonly code: 'score-unreadable'; readonly facts: { readonly reason: string } }
  | { readonly code: 'score-not-music'; readonly facts: { readonly root: string } }
  | { readonly code: 'score-timewise'; readonly facts: Readonly<Record<string, never>> }
  | {
      readonly code: 'score-too-large';
      readonly facts: { readonly characters: number; readonly most: number };
    }
  | { readonly code: 'score-without-strokes'; readonly facts: Readonly<Record<string, never>> }
  | { readonly code: 'score-endings'; readonly facts: { readonly bar: number } }
  | { readonly code: 'score-bar-uneven'; readonly facts: { readonly bar: number } }
  | {
      readonly code: 'score-line-unwritable';
      readonly facts: { readonly bar: number; readonly reason: string };
    };

export interface Score {
  readonly title: string;
  readonly bars: readonly ScoreBar[];
  readonly notes: readonly ScoreNote[];
}
