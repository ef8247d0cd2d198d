import type { ClickTimes } from '../../core/click/click-times.ts';
import type { Sheet } from '../../core/exercise/sheet.ts';
import type { PlayedClick } from '../../core/grading/click-to-hold-against.ts';
import type { RecordingGap } from '../../core/grading/recording-gaps.ts';
import type { LiveHeard } from '../../core/onsets/live-strokes.ts';
import type { Reason, TakeResult } from '../../core/result/take-result.ts';
import type { ShownLesson } from '../../report/weeks/lesson-page.ts';
import type { ShownLessons } from '../../report/weeks/lessons-page.ts';
import type { Periods } from '../../report/weeks/periods-page.ts';
import type { PlayerProgress } from '../../report/weeks/progress-page.ts';
import type { TakePair } from '../../report/weeks/take-pair-page.ts';

/** The sound of a take: a file's bytes, or samples, one array a channel. */
export type TakeSound =
  | { readonly bytes: Uint8Array }
  | { readonly samples: readonly Float32Array[]; readonly sampleRate: number };

/** What is known of a take besides its sound. */
export interface TakeFacts {
  /** Name of the recording, shown to people. */
  readonly name: string;
  readonly sheet: Sheet;
  /** The click that was played to the player while recording. */
  readonly playedClick?: PlayedClick;
  /** Stretches of samples that were lost while recording. */
  readonly gaps?: readonly RecordingGap[];
  /** What is known of the recording before it is listened to. */
  readonly warnings?: readonly Reason[];
  /** The player noted pain or discomfort: no advice to go faster. */
  readonly discomfort?: boolean;
}

/** From where to where in a recording, s. */
export type SoundStretch = readonly [from: number, to: number];

/** What a page on several takes shows. */
export type ShownWeeks =
  | { readonly kind: 'pair'; readonly pair: TakePair }
  | { readonly kind: 'progress'; readonly shown: PlayerProgress }
  | { readonly kind: 'periods'; readonly periods: Periods }
  | { readonly kind: 'lesson'; readonly shown: ShownLesson }
  | { readonly kind: 'lessons'; readonly shown: ShownLessons };

/** Wishes for a recording that is heard while it comes carry the number under which hearing it began. */
export type EngineWish =
  | { readonly wish: 'grade'; readonly sound: TakeSound; readonly facts: TakeFacts }
  | { readonly wish: 'report'; readonly result: TakeResult; readonly sound: TakeSound | null }
  /** `part`: from where to where, s; all of it without. */
  | { readonly wish: 'mp3'; readonly sound: TakeSound; readonly part?: SoundStretch }
  | { readonly wish: 'week-page'; readonly page: ShownWeeks }
  | { readonly wish: 'warm-up' }
  | { readonly wish: 'hear'; readonly sampleRate: number; readonly sheet: Sheet; readonly live: boolean }
  | {
      readonly wish: 'hear-more';
      readonly recording: number;
      readonly at: number;
      readonly samples: Float32Array;
    }
  | { readonly wish: 'over'; readonly recording: number; readonly put?: readonly ClickTimes[] }
  | { readonly wish: 'grade-heard'; readonly recording: number; readonly facts: TakeFacts }
  | { readonly wish: 'leave'; readonly recording: number };

export type EngineAnswer =
  /** `bytes`: the recording as a file, where it was heard while it came. */
  | { readonly answer: 'result'; readonly result: TakeResult; readonly bytes?: Uint8Array<ArrayBuffer> }
  /** The only answer that may come many times for one wish. */
  | { readonly answer: 'heard'; readonly heard: LiveHeard }
  | { readonly answer: 'report'; readonly html: string }
  /** A data URI; null for a sound too long to go inside a page. */
  | { readonly answer: 'mp3'; readonly uri: string | null }
  | { readonly answer: 'fault'; readonly sentence: string; readonly unreadable: boolean };

export interface Numbered<T> {
  readonly number: number;
  readonly body: T;
}
