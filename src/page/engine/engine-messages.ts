import type { Sheet } from '../../core/exercise/sheet.ts';
import type { PlayedClick } from '../../core/grading/click-to-hold-against.ts';
import type { RecordingGap } from '../../core/grading/recording-gaps.ts';
import type { Reason, TakeResult } from '../../core/result/take-result.ts';

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

export type EngineWish =
  | { readonly wish: 'grade'; readonly sound: TakeSound; readonly facts: TakeFacts }
  | { readonly wish: 'report'; readonly result: TakeResult; readonly sound: TakeSound | null };

export type EngineAnswer =
  | { readonly answer: 'result'; readonly result: TakeResult }
  | { readonly answer: 'report'; readonly html: string }
  | { readonly answer: 'fault'; readonly sentence: string; readonly unreadable: boolean };

export interface Numbered<T> {
  readonly number: number;
  readonly body: T;
}
