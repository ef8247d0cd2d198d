import type { ClickTimes } from '../../core/click/click-times.ts';
import type { LiveHeard } from '../../core/onsets/live-strokes.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import type { TakeFacts } from './engine-messages.ts';

/** A recording that is heard while it comes, so that little is left to do when it is over. */
export interface HeardRecording {
  /** Samples that begin at frame `at` of the recording; what is missing before them is silence. They are copied. */
  add(at: number, samples: Float32Array): void;
  /**
   * The recording is over: what can be done is begun, though it isn't known yet what else is to be said of it.
   * `put`: the clicks that were put out meanwhile.
   */
  over(put?: readonly ClickTimes[]): void;
  /** Grades it. Null where it couldn't be heard along: too long, or the worker failed. */
  grade(facts: TakeFacts): Promise<HeardResult | null>;
  /** Forgets it. */
  leave(): void;
}

export interface HeardResult {
  readonly result: TakeResult;
  /** The recording as a wave file, 24 bits a sample: what was graded. */
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** Is told what is heard while a recording comes. */
export type HeardTold = (heard: LiveHeard) => void;
