/** What a click tells: the count before the first beat, a bar's first beat, another beat, or a part of one. */
export type ClickKind = 'count-in' | 'bar' | 'beat' | 'subdivision';

export type ClickSound = 'wood' | 'tick' | 'beep';

/** One click, whether it sounds or is left out for the player to hold the beat alone. */
export interface PlannedClick {
  /** s from the start of the track. */
  readonly time: number;
  readonly kind: ClickKind;
  readonly audible: boolean;
}

/** Every click of a track, in order of time. */
export interface ClickPlan {
  readonly clicks: readonly PlannedClick[];
  readonly sound: ClickSound;
  /** A bell on every bar's first beat. */
  readonly bell: boolean;
  /** s from the start of the track to the sheet's first beat. */
  readonly firstBeat: number;
  /** s to the end of the last beat. */
  readonly duration: number;
}

/**
 * Bars that sound, then bars that don't, over and over. `lengths` holds the bars of each silence in turn; the last one
 * stands for all that follow.
 */
export interface SilentBars {
  readonly heard: number;
  readonly lengths: readonly number[];
}

export interface ClickOptions {
  readonly sound: ClickSound;
  /** Clicks in a beat: 1 for beats alone. */
  readonly subdivisions: number;
  readonly bell: boolean;
  /** Beats counted in before the first beat; null for one bar. */
  readonly countInBeats: number | null;
  readonly silence: SilentBars | null;
}

export const plainClick: ClickOptions = {
  sound: 'wood',
  subdivisions: 1,
  bell: false,
  countInBeats: null,
  silence: null,
};
