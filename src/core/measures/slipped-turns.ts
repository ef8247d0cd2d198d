import type { Alignment } from '../alignment/alignment.ts';
import type { LevelEvidence } from '../alignment/level-evidence.ts';
import type { Slot } from '../exercise/slot.ts';
import { type AccentTurn, leastGain, linePatterns, patternAt, tellingShifts } from './accent-turns.ts';
import type { PlayedStroke } from './played-stroke.ts';

/** Strokes by which a segment's accents come late against the pulse of the one before it; negative = early. */
function slippedBy({ segments }: Alignment, at: number, slots: readonly Slot[], time: number): number {
  const before = segments[at - 1]!;
  const [was, is] = [slots[before.firstSlot]!, slots[segments[at]!.firstSlot]!];
  const due = before.origin + before.period * (is.beatTime - was.beatTime + was.position);
  return Math.round(((time - due) / before.period) * is.divisions);
}

/**
 * Turns that the alignment followed: where a run lies some partials off the click, or, without one, goes on in the
 * pulse some partials off, its accents lie on other partials of the beat than written. Whether a partial was dropped or
 * put in, or the accent turned round, sound alone doesn't tell. Without a click slips add up until a run begins anew;
 * only runs whose levels bear the turn out are kept.
 */
export function slippedTurns({
  alignment,
  slots,
  strokes,
  evidence,
  offClick = [],
}: {
  readonly alignment: Alignment;
  readonly slots: readonly Slot[];
  readonly strokes: readonly PlayedStroke[];
  readonly evidence: LevelEvidence;
  /** For each segment by how many partials its beats lie off the clicks; null where no click tells. */
  readonly offClick?: readonly (number | null)[];
}): AccentTurn[] {
  const { accents, placeOf, divisions } = linePatterns(slots);
  const segmentOf = new Map(alignment.matches.map(({ stroke, segment }) => [stroke, segment]));
  const rangeOf = new Map<number, { from: number; to: number }>();
  strokes.forEach(({ stroke }, i) => {
    const segment = segmentOf.get(stroke)!;
    rangeOf.set(segment, { from: rangeOf.get(segment)?.from ?? i, to: i });
  });
  const turns: AccentTurn[] = [];
  let total = 0;
  let line = -1;
  alignment.segments.forEach(({ began, firstSlot, state }, at) => {
    const here = slots[firstSlot]!.line;
    const range = rangeOf.get(at);
    if ((began !== 'slip' && began !== 'on') || here !== line || at === 0) total = 0;
    line = here;
    if (state !== 'graded' || !range) return;
    if (began === 'slip' && at > 0) total += slippedBy(alignment, at, slots, strokes[range.from]!.time);
    total = offClick[at] ?? total;
    if (total === 0) return;
    const pattern = accents.get(here)!;
    const same = (by: number) =>
      pattern.every(
        (accent, i) => accent === patternAt(pattern, i - by) && accent === patternAt(pattern, i + by),
      );
    if (same(total)) {
      total = 0;
      return;
    }
    let gain = 0;
    for (let i = range.from; i <= range.to; i++) {
      const { slot } = strokes[i]!;
      if (slot.line !== here) continue;
      const place = placeOf.get(slot.index)!;
      const odds = evidence.asAccent[i]! - evidence.asTap[i]!;
      gain += odds * (Number(patternAt(pattern, place)) - Number(patternAt(pattern, place + total)));
    }
    if (gain < leastGain) return;
    // A shift of two partials in triplets is one partial the other way.
    const by =
      tellingShifts(pattern, divisions.get(here)!).find((shift) =>
        pattern.every((_, i) => patternAt(pattern, i - shift) === patternAt(pattern, i - total)),
      ) ?? total;
    turns.push({ ...range, opensAt: strokes[range.from]!.stroke, by, logLikelihood: gain });
  });
  return turns;
}
