import type { TakeResult } from '../../core/result/take-result.ts';
import type { RecordingPart } from '../content-ids.ts';
import type { Guess } from '../guess.ts';
import type { TakeDetails } from '../new-take.ts';
import type { RecordingFacts } from '../recording-facts.ts';
import type { SetUp } from '../set-up.ts';
import type { RemarkInFile } from './take-file-manifest.ts';

/** A take as it travels from one library to another: all that belongs to it, nothing of the library's own. */
export interface TakeParcel {
  readonly player: { readonly id: string; readonly name: string } | null;
  readonly recordedAt: number;
  readonly day: string;
  readonly part: RecordingPart | null;
  readonly details: TakeDetails;
  readonly tags: readonly string[];
  readonly gradedWith: string;
  readonly setUp: Omit<SetUp, 'personId'> | null;
  readonly guess: Guess | null;
  readonly recordingFacts: RecordingFacts;
  readonly audio: { readonly name: string; readonly bytes: Uint8Array } | null;
  readonly sheetText: string;
  readonly result: TakeResult;
  readonly remarks: readonly RemarkInFile[];
}
