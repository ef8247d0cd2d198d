import { gradeHearing } from '../../core/grading/grade-hearing.ts';
import { type LiveHeard, liveStrokes } from '../../core/onsets/live-strokes.ts';
import { growingSource } from '../../core/signal/growing-source.ts';
import { growingWav } from '../../formats/growing-wav.ts';
import type { TakeFacts } from './engine-messages.ts';
import type { HeardResult } from './heard-recording.ts';
import { sha256Of } from './sha256-of.ts';

/** A recording in the engine's worker, heard and written as a file while it comes. */
export interface HearingAlong {
  add(at: number, samples: Float32Array): LiveHeard;
  grade(facts: TakeFacts): Promise<HeardResult>;
}

/** What is graded is what the file gives back, so that grading the file again gives the same. */
export function hearAlong(sampleRate: number): HearingAlong {
  const recording = growingSource(sampleRate);
  const wav = growingWav(sampleRate);
  const live = liveStrokes();
  let length = 0;
  const append = (samples: Float32Array) => {
    recording.add(length, wav.add(samples));
    length += samples.length;
  };
  return {
    add(at, samples) {
      if (at > length) append(new Float32Array(at - length));
      append(samples.subarray(length - at));
      return live.goOn(recording.source());
    },
    async grade({ sheet, ...known }) {
      const bytes = wav.bytes();
      // Worked out beside the hearing.
      const digest = sha256Of(bytes);
      const source = recording.source();
      const hearing = live.listening.end(source);
      return { result: gradeHearing(source, hearing, sheet, { ...known, sha256: await digest }), bytes };
    },
  };
}
