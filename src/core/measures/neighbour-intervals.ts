import type { PlayedStroke } from './played-stroke.ts';

/** Time from one stroke to the next one written right after it. */
interface NeighbourInterval {
  /** Index of the later stroke. */
  readonly end: number;
  /** s a beat: intervals of different partials compare. */
  readonly perBeat: number;
  /** Beats between the two. */
  readonly beats: number;
}

/** Intervals between strokes that follow each other; over a missed stroke or a rest there is none. */
export function neighbourIntervals(
  strokes: readonly PlayedStroke[],
  times: ArrayLike<number> = strokes.map((s) => s.time),
): NeighbourInterval[] {
  return strokes.flatMap((stroke, end) => {
    const before = strokes[end - 1];
    if (!before || before.stretch !== stroke.stretch) return [];
    const beats = stroke.position - before.position;
    if (beats * Math.min(before.slot.divisions, stroke.slot.divisions) > 1.01) return [];
    return [{ end, beats, perBeat: (times[end]! - times[end - 1]!) / beats }];
  });
}
