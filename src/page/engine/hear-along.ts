import type { ClickTimes } from '../../core/click/click-times.ts';
import type { Sheet } from '../../core/exercise/sheet.ts';
import { gradeTake } from '../../core/grade-take.ts';
import { clicksToFind } from '../../core/grading/clicks-to-find.ts';
import { type GatheredSound, gatherSound } from '../../core/grading/gathered-sound.ts';
import { gradeHearing } from '../../core/grading/grade-hearing.ts';
import { type LiveHeard, liveStrokes } from '../../core/onsets/live-strokes.ts';
import type { Hearing } from '../../core/onsets/stroke.ts';
import { growingSource } from '../../core/signal/growing-source.ts';
import { growingWav } from '../../formats/growing-wav.ts';
import { sha256Hex } from '../../library/sha256-hex.ts';
import type { TakeFacts } from './engine-messages.ts';
import type { HeardResult } from './heard-recording.ts';
import { mp3Along } from './mp3-along.ts';

/** A recording in the engine's worker, heard and written as a file while it comes. */
export interface HearingAlong {
  /** What is heard now; null where nobody wants to know. */
  add(at: number, samples: Float32Array): LiveHeard | null;
  /** Nothing more comes: settles what was heard beside clicks that were put out meanwhile. */
  over(put?: readonly ClickTimes[]): void;
  grade(facts: TakeFacts): Promise<HeardResult>;
  /** The recording as an MP3, once it is over; null where that wasn't to be had. */
  mp3(): Uint8Array | null;
}

interface Settled {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly digest: Promise<string>;
  readonly hearing: Hearing;
  readonly gathered: GatheredSound;
}

/** What is to be heard. */
interface AlongWish {
  readonly sampleRate: number;
  readonly sheet: Sheet;
  /** Whether strokes are followed while they are played: nothing may hold them up then. */
  readonly live: boolean;
}

/**
 * s of a recording after which what there is of it is graded once for nothing: a browser compiles a program for what it
 * is given, and grading is twice as quick after it. Before most takes can be over.
 */
const rehearsedAt = 8;

/** What is graded is what the file gives back, so that grading the file again gives the same. */
export function hearAlong({ sampleRate, sheet: played, live: followed }: AlongWish): HearingAlong {
  const recording = growingSource(sampleRate);
  const wav = growingWav(sampleRate);
  const live = liveStrokes();
  const gathering = gatherSound(sampleRate);
  const mp3 = mp3Along(sampleRate);
  let length = 0;
  let rehearsed = followed;
  const append = (samples: Float32Array) => {
    recording.add(length, wav.add(samples));
    length += samples.length;
  };
  let end: Settled | undefined;
  function settled(put?: readonly ClickTimes[]) {
    if (end === undefined) {
      const bytes = wav.bytes();
      // The digest is worked out beside the hearing.
      const digest = sha256Hex(bytes);
      const source = recording.source();
      end = {
        bytes,
        digest,
        hearing: live.listening.end(source, undefined, put),
        gathered: gathering.end(source),
      };
    }
    return end;
  }
  return {
    add(at, samples) {
      if (at > length) append(new Float32Array(at - length));
      append(samples.subarray(length - at));
      const heard = live.goOn(recording.source());
      gathering.goOn(recording.source());
      mp3.goOn(recording.source());
      if (!rehearsed && length > rehearsedAt * sampleRate) {
        rehearsed = true;
        gradeTake(recording.source(), played);
      }
      return followed ? heard : null;
    },
    over: (put) => void settled(put),
    async grade({ sheet, ...known }) {
      const { bytes, digest, hearing, gathered } = settled(clicksToFind(known.playedClick));
      const sha256 = await digest;
      const options = { ...known, sha256, gathered };
      return { result: gradeHearing(recording.source(), hearing, sheet, options), bytes };
    },
    mp3: () => mp3.end(recording.source()),
  };
}
