import type { Alignment } from '../alignment/alignment.ts';
import type { Slot } from '../exercise/slot.ts';
import type { Stroke } from '../onsets/stroke.ts';
import type { Reason } from '../result/take-result.ts';
import { extent } from '../stats/extent.ts';

/** Where samples were lost: in the recording they stand as silence, so that what follows keeps its time. */
export interface RecordingGap {
  /** Frame of the recording at which it begins. */
  readonly at: number;
  readonly frames: number;
}

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** So near a gap's edge nothing can be told from the cut, s: as at a recording's ends. */
const edgeSeconds = 0.012;
/** A stroke due so near a gap may have been played inside it, as a share of its partial. Our judgement. */
const lateShare = 0.3;

/** What lies before a recording's first frame and behind its last, as stretches in which nothing could be heard. */
const beyondEnds = (duration: number): Stretch[] => [
  { from: Number.NEGATIVE_INFINITY, to: 0 },
  { from: duration, to: Number.POSITIVE_INFINITY },
];

const stretches = (gaps: readonly RecordingGap[], sampleRate: number): Stretch[] =>
  gaps.map(({ at, frames }) => ({ from: at / sampleRate, to: (at + frames) / sampleRate }));

/** Strokes without those that a gap's edges make or spoil. */
export function strokesOutsideGaps(
  strokes: readonly Stroke[],
  gaps: readonly RecordingGap[],
  sampleRate: number,
): readonly Stroke[] {
  if (gaps.length === 0) return strokes;
  const cut = stretches(gaps, sampleRate);
  return strokes.filter(
    ({ time }) => !cut.some(({ from, to }) => time > from - edgeSeconds && time < to + edgeSeconds),
  );
}

/**
 * An alignment in which slots that were due inside a gap, or so near that they may have been played there, are unheard
 * instead of missed, and so are those due before the recording began or after it ended (`duration`, s; left out, it has no ends).
 * Doing it twice changes nothing.
 *
 * @example withUnheard(alignment, { slots, strokes }, [{ at: 480000, frames: 4800 }], 48000).unheard // slots due from 10 to 10.1 s
 */
export function withUnheard(
  alignment: Alignment,
  { slots, strokes }: { readonly slots: readonly Slot[]; readonly strokes: readonly Stroke[] },
  gaps: readonly RecordingGap[],
  sampleRate: number,
  duration?: number,
): Alignment {
  const ends = duration === undefined ? [] : beyondEnds(duration);
  const cut = [...stretches(gaps, sampleRate), ...ends];
  if (cut.length === 0) return alignment;
  const unheard = new Set(alignment.unheard);
  for (const { state, firstSlot, lastSlot, origin, period } of alignment.segments) {
    if (state !== 'graded') continue;
    const first = slots[firstSlot]!;
    for (const index of alignment.missed) {
      if (index < firstSlot || index > lastSlot) continue;
      const { beatTime, divisions } = slots[index]!;
      const due = origin + period * (beatTime - first.beatTime + first.position);
      const reach = edgeSeconds + (lateShare * period) / divisions;
      if (cut.some(({ from, to }) => due > from - reach && due < to + reach)) unheard.add(index);
    }
  }
  // A long gap may part two runs: what lies between them was due in it.
  const graded = alignment.segments.flatMap((segment, i) =>
    segment.state === 'graded' ? [{ segment, i }] : [],
  );
  const timesOf = (i: number) =>
    alignment.matches.filter(({ segment }) => segment === i).map(({ stroke }) => strokes[stroke]!.time);
  graded.slice(1).forEach(({ segment, i }, n) => {
    const before = graded[n]!;
    const from = extent(timesOf(before.i)).most;
    const to = extent(timesOf(i)).least;
    if (!cut.some((gap) => gap.from > from - edgeSeconds && gap.to < to + edgeSeconds)) return;
    for (let slot = before.segment.lastSlot + 1; slot < segment.firstSlot; slot++) unheard.add(slot);
  });
  const missed = alignment.missed.filter((slot) => !unheard.has(slot));
  return { ...alignment, missed, unheard: [...unheard].sort((a, b) => a - b) };
}

/** What the reader must know of the gaps, or of an end of the recording that cuts the exercise. */
export function gapWarnings(
  gaps: readonly RecordingGap[],
  sampleRate: number,
  unheard: readonly number[] = [],
): Reason[] {
  const cut = stretches(gaps, sampleRate);
  if (cut.length === 0)
    return unheard.length === 0 ? [] : [{ code: 'cut-inside-exercise', facts: { unheard: unheard.length } }];
  const seconds = cut.reduce((sum, { from, to }) => sum + to - from, 0);
  const facts = { gaps: cut.length, from: cut[0]!.from, seconds, unheard: unheard.length };
  return [{ code: 'gaps-in-recording', facts }];
}
