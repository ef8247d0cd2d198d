import type { Performance } from '../measures/performance.ts';
import type { Hearing, Stroke } from '../onsets/stroke.ts';
import type { RecordingFinding } from '../result/take-result.ts';
import type { Source } from '../signal/source.ts';
import type { QuietCourse } from './quiet-course.ts';
import type { SoundFeatures } from './sound-pass.ts';
import type { Unevenness } from './spectral-unevenness.ts';

/** All that a finding may read: the recording, what was heard in it, and what that was taken for. */
export interface HeardRecording {
  readonly source: Source;
  /** One for each channel, and that of the loudest. */
  readonly channels: readonly SoundFeatures[];
  readonly sound: SoundFeatures;
  readonly hearing: Hearing;
  readonly performance: Performance;
  /** Strokes that somebody else played, by their sound; they are in no performance. */
  readonly others: readonly Stroke[];
  readonly quiet: QuietCourse;
  /** How uneven the spectrum of the quiet is. */
  readonly unevenness: Unevenness;
  /** Level of the place by itself, on the scale of strokes' levels, dBFS. */
  readonly noiseDb: number;
  /** Of a recording in few bits its step, full scale 1, and how loud the steps are themselves, as `noiseDb`. */
  readonly coarse: { readonly step: number; readonly noiseDb: number } | null;
  /** The click that was played while it was recorded: beats, s of the recording, and which of them sounded. */
  readonly playedClick?:
    | { readonly times: readonly number[]; readonly audible?: readonly boolean[] }
    | undefined;
  /** Stretches known to be missing, samples. */
  readonly gaps: readonly { readonly at: number; readonly frames: number }[];
}

export type Finding = RecordingFinding;

/** One check: its finding, or null where there is nothing to say. */
export type FindingOf = (heard: HeardRecording) => Finding | null;
