import type { RecordingKind } from './recording-kind.ts';

/** Why the sound of a file that isn't plain samples can't be had. */
export type CodedFault =
  | { readonly code: 'coded-unreadable'; readonly facts: { readonly kind: RecordingKind } }
  | { readonly code: 'no-sound-track'; readonly facts: { readonly kind: RecordingKind } }
  | { readonly code: 'codec-unreadable'; readonly facts: { readonly codec: string } }
  | { readonly code: 'decoder-missing'; readonly facts: { readonly codec: 'aac' | 'alac' } }
  | {
      readonly code: 'too-many-channels';
      readonly facts: { readonly channels: number; readonly most: number };
    }
  | { readonly code: 'too-long'; readonly facts: Readonly<Record<string, never>> }
  | { readonly code: 'no-channels'; readonly facts: Readonly<Record<string, never>> }
  | {
      readonly code: 'rate-out-of-range';
      readonly facts: { readonly sampleRate: number; readonly lowest: number; readonly highest: number };
    };

/** Why a file's bytes can't be read as a recording. */
export type LayoutFault =
  | CodedFault
  | { readonly code: 'empty-file'; readonly facts: Readonly<Record<string, never>> }
  | { readonly code: 'not-a-recording'; readonly facts: { readonly kind: RecordingKind } }
  | { readonly code: 'riff-without-wave'; readonly facts: { readonly form: string } }
  | { readonly code: 'big-endian-wave'; readonly facts: Readonly<Record<string, never>> }
  | { readonly code: 'no-format'; readonly facts: Readonly<Record<string, never>> }
  | { readonly code: 'format-cut-short'; readonly facts: { readonly bytes: number } }
  | { readonly code: 'coding-unreadable'; readonly facts: { readonly coding: string } }
  | { readonly code: 'depth-unreadable'; readonly facts: { readonly coding: string; readonly bits: number } }
  | {
      readonly code: 'frame-size-contradiction';
      readonly facts: { readonly frameBytes: number; readonly channels: number; readonly bits: number };
    }
  | { readonly code: 'no-data'; readonly facts: Readonly<Record<string, never>> }
  | { readonly code: 'no-samples'; readonly facts: Readonly<Record<string, never>> };

/** Why a path can't be opened as a recording. */
export type RecordingFault =
  | LayoutFault
  | { readonly code: 'file-missing'; readonly facts: Readonly<Record<string, never>> }
  | { readonly code: 'is-a-folder'; readonly facts: Readonly<Record<string, never>> }
  | { readonly code: 'not-permitted'; readonly facts: Readonly<Record<string, never>> }
  | { readonly code: 'nothing-piped'; readonly facts: Readonly<Record<string, never>> }
  | { readonly code: 'too-much-piped'; readonly facts: { readonly mebibytes: number } }
  | { readonly code: 'read-failed'; readonly facts: { readonly reason: string } };

/** What was mended while reading: the recording can be used, its end may be missing. */
export type RecordingNote =
  | { readonly code: 'end-missing'; readonly facts: { readonly missingSeconds: number } }
  | { readonly code: 'length-not-written'; readonly facts: Readonly<Record<string, never>> };
