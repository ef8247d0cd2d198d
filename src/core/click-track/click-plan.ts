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

/** Bars that sound, then bars that don't, over and over; the silence grows by a bar each time where that is asked for. */
export interface SilentBars {
  readonly heard: number;
  readonly silent: number;
  readonly grows: boolean;
}

export interface ClickOptions {
  readonly sound: ClickSound;
  /** Clicks in a beat: 1 for beats alone. */
  readonly subdivisions: number;
  readonly bell: boolean;
  /** Bars counted in before the first beat. */
  readonly countInBars: number;
  readonly silence: SilentBars | null;
}

export const plainClick: ClickOptions = {
  sound: 'wood',
  subdivisions: 1,
  bell: false,
  countInBars: 1,
  silence: null,
};
