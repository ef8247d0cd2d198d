import type { Alignment } from '../alignment/alignment.ts';
import type { Stroke } from '../onsets/stroke.ts';
import type { TakeResult } from '../result/take-result.ts';

/** The runs of a take with the times of their first and last stroke and their tempo. */
export function segmentList(alignment: Alignment, strokes: readonly Stroke[]): TakeResult['segments'] {
  const from = alignment.segments.map(() => Number.POSITIVE_INFINITY);
  const to = alignment.segments.map(() => Number.NEGATIVE_INFINITY);
  for (const { segment, stroke } of alignment.matches) {
    const { time } = strokes[stroke]!;
    from[segment] = Math.min(from[segment]!, time);
    to[segment] = Math.max(to[segment]!, time);
  }
  return alignment.segments.map(({ firstSlot, lastSlot, state, began, leadSwapped, origin, period }, i) => ({
    firstSlot,
    lastSlot,
    state,
    ...(began === undefined ? {} : { began }),
    leadSwapped,
    from: Number.isFinite(from[i]!) ? from[i]! : origin,
    to: Number.isFinite(to[i]!) ? to[i]! : origin,
    bpm: 60 / period,
  }));
}
