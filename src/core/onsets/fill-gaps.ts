import type { RiseCandidate } from './rise-candidate.ts';
import type { Stroke } from './stroke.ts';
import { gapIntervals, neighbours, usualInterval } from './usual-interval.ts';

/** How far from an even division of the gap a faint stroke may lie, in usual intervals. */
const offPlace = 0.22;
/** A faint stroke lies between the softest strokes and the loudest, with this much room below and above, dB. */
const room = { belowDb: 6, aboveDb: 2 };

/**
 * Looks again where a row of strokes has a gap: a rise too faint to be a stroke anywhere is one where a stroke is due.
 * `faint` are those rises in order, `measure` makes a stroke of one (null: not one after all). Nothing is invented:
 * without a rise the gap stays.
 */
export function fillGaps(
  sounds: readonly Stroke[],
  faint: readonly RiseCandidate[],
  frameRate: number,
  measure: (rise: RiseCandidate, previousTime: number) => Stroke | null,
): Stroke[] {
  const pads = sounds.filter(({ sound }) => sound === 'pad');
  if (pads.length < 2 * neighbours || faint.length === 0) return [...sounds];
  const levels = pads.map(({ levelDb }) => levelDb).sort((a, b) => a - b);
  const lowest = levels[Math.floor(levels.length * 0.05)]! - room.belowDb;
  const highest = levels.at(-1)! + room.aboveDb;
  const found: Stroke[] = [];
  let next = 0;
  for (let i = 1; i < pads.length; i++) {
    const [from, to] = [pads[i - 1]!.time, pads[i]!.time];
    const usual = usualInterval(pads, i);
    const parts = Math.round((to - from) / usual);
    if (to - from < gapIntervals.shortest * usual || to - from > gapIntervals.longest * usual) continue;
    while (next < faint.length && faint[next]!.frame / frameRate < from) next++;
    const part = (to - from) / parts;
    for (let k = 1; k < parts; k++) {
      const due = from + k * part;
      let best: RiseCandidate | null = null;
      for (let f = next; f < faint.length && faint[f]!.frame / frameRate < to; f++) {
        const rise = faint[f]!;
        if (Math.abs(rise.frame / frameRate - due) > offPlace * usual) continue;
        if (best === null || rise.evidence > best.evidence) best = rise;
      }
      const stroke = best === null ? null : measure(best, found.at(-1)?.time ?? from);
      if (stroke !== null && stroke.levelDb > lowest && stroke.levelDb < highest) found.push(stroke);
    }
  }
  return [...sounds, ...found].sort((a, b) => a.time - b.time);
}
