import type { TakeResult } from '../core/result/take-result.ts';
import type { RecordingPart } from './content-ids.ts';
import type { RecordingFacts } from './recording-facts.ts';

/** What a player writes down about how a take was played and recorded; nothing of it is heard. Empty where unknown. */
export interface TakeDetails {
  readonly technique: string;
  readonly pad: string;
  readonly sticks: string;
  readonly device: string;
}

export const noDetails: TakeDetails = { technique: '', pad: '', sticks: '', device: '' };

/** A graded take that is to be kept. */
export interface NewTake {
  readonly result: TakeResult;
  /** The sheet it was held against, as text. */
  readonly sheetText: string;
  /** The recording as a file, or null to keep the result alone. */
  readonly audio: { readonly name: string; readonly bytes: Uint8Array } | null;
  readonly part?: RecordingPart | null;
  /** What was known of the recording besides its sound. */
  readonly recordingFacts?: RecordingFacts;
  /** When it was played, ms since 1970, and the player's own calendar day. */
  readonly recordedAt: number;
  readonly day: string;
  readonly keptAt: number;
  readonly personId: string | null;
  readonly details?: Partial<TakeDetails>;
  readonly setUpId?: string | null;
  readonly tags?: readonly string[];
  readonly gradedWith?: string;
}
