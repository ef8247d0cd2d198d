import type { Sheet } from '../exercise/sheet.ts';
import type { Slot } from '../exercise/slot.ts';
import { areAdjacent } from './adjacent-slots.ts';
import type { AccentPlace } from './played-stroke.ts';

/** What a slot's neighbours say of it. */
interface StrokeContext {
  readonly place: AccentPlace;
  /** The written hand differs from the stroke before; null when nothing stands right before it. */
  readonly handChange: boolean | null;
}

/**
 * Context of every main slot, by slot index. At the two ends of a line's repeats the line is read as going round, as
 * it does on every repeat: a single stroke with a context of its own would pass for a habit.
 */
export function strokeContexts(slots: readonly Slot[], sheet: Sheet): ReadonlyMap<number, StrokeContext> {
  const main = slots.filter((slot) => !slot.grace);
  const contexts = new Map<number, StrokeContext>();
  const lines = new Map<number, Slot[]>();
  for (const slot of main) {
    const own = lines.get(slot.line);
    if (own) own.push(slot);
    else lines.set(slot.line, [slot]);
  }
  const ends = new Map<number, { readonly first: Slot; readonly last: Slot; readonly gap: number }>();
  for (const [line, own] of lines) {
    const first = own[0]!;
    const last = own.at(-1)!;
    const length = sheet.lines[line]!.beats.length;
    ends.set(line, { first, last, gap: length - last.position + first.position });
  }
  main.forEach((slot, i) => {
    const neighbour = (step: -1 | 1): Slot | null => {
      const next = main[i + step];
      if (next?.line === slot.line) {
        const gap = Math.abs(next.beatTime - slot.beatTime);
        return areAdjacent(slot, next, gap) ? next : null;
      }
      const { first, last, gap } = ends.get(slot.line)!;
      if (!areAdjacent(last, first, gap)) return null;
      return step === 1 ? first : last;
    };
    const before = neighbour(-1);
    const place = slot.accent ? 'on' : before?.accent ? 'after' : neighbour(1)?.accent ? 'before' : 'other';
    contexts.set(slot.index, { place, handChange: before ? before.hand !== slot.hand : null });
  });
  return contexts;
}
