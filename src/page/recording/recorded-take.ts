import type { PlayedClick } from '../../core/grading/click-to-hold-against.ts';
import type { RecordingGap } from '../../core/grading/recording-gaps.ts';
import type { Reason } from '../../core/result/take-result.ts';
import type { HeardRecording } from '../engine/heard-recording.ts';
import type { MicrophoneSettings } from './open-microphone.ts';
import type { DeviceProof } from './proof/device-proof.ts';
import type { Trouble } from './recording-trouble.ts';

/** The devices of a take, as far as they tell. Labels are untrusted text. */
interface RecordedDevice {
  readonly input: string;
  readonly output: string;
  readonly settings: MicrophoneSettings;
  /** What playing clicks to it proved; null where nobody tried. */
  readonly proof: DeviceProof | null;
}

/** A finished recording. `playedClick`, `gaps` and `warnings` go to `gradeTake` as they are. */
export interface RecordedTake {
  /** One channel at full scale ±1, as the device gave it; gaps are silence. */
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
  /** The same recording as it was heard while it came, to be graded; null where nothing heard along. */
  readonly heard: HeardRecording | null;
  readonly gaps: readonly RecordingGap[];
  /** Beats of the click on the recording's own time, or null where none was played. */
  readonly playedClick: PlayedClick | null;
  /** The same times, s; null where their delay isn't known. */
  readonly clickTimes: readonly number[] | null;
  readonly warnings: readonly Reason[];
  readonly troubles: readonly Trouble[];
  readonly device: RecordedDevice;
  /** Same-set-up reference played earlier that day, in the library, or null. */
  readonly setUpId: string | null;
  /** Whether a copy lies in the browser's private files until `release`. */
  readonly safe: boolean;
  /** To be called once the take is kept elsewhere or thrown away: removes that copy for real. */
  release(): Promise<void>;
}
