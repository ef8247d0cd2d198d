import type { RecordingGap } from '../../../core/grading/recording-gaps.ts';
import type { CapturedBlock } from './captured-block.ts';

/** Where a recording stands between two blocks. */
export interface FramesFollowed {
  /** The context's frame of the recording's first sample, or null before the first block. */
  readonly first: number | null;
  /** Frames of the recording so far, gaps included. */
  readonly length: number;
  readonly gaps: readonly RecordingGap[];
}

export const nothingFollowed: FramesFollowed = { first: null, length: 0, gaps: [] };

interface FollowedBlock {
  readonly followed: FramesFollowed;
  /** Where in the recording the block's samples go, and how many of them are new. */
  readonly at: number;
  readonly skip: number;
}

/**
 * Puts a block into the recording by its frame: right behind the one before, or later where frames are missing, which
 * is a gap. Frames that are there already are left out.
 *
 * @example followFrames(nothingFollowed, { frame: 512, samples: new Float32Array(128), clockMs: 0 }).at // 0
 */
export function followFrames(before: FramesFollowed, { frame, samples }: CapturedBlock): FollowedBlock {
  const first = before.first ?? frame;
  const place = frame - first;
  const skip = Math.min(samples.length, Math.max(0, before.length - place));
  const missing = place - before.length;
  const gaps = missing > 0 ? [...before.gaps, { at: before.length, frames: missing }] : before.gaps;
  const length = Math.max(before.length, place + samples.length);
  return { followed: { first, length, gaps }, at: place + skip, skip };
}
