import type { Sheet } from '../exercise/sheet.ts';
import type { Slot } from '../exercise/slot.ts';
import { median } from '../stats/median.ts';

/** One bar of one repeat, by its first and last main slot. */
interface Bar {
  readonly first: number;
  readonly last: number;
  readonly line: number;
  readonly startsRepeat: boolean;
  readonly startsLine: boolean;
  /** Beats from the first beat of the sheet at which the bar begins and the next one is due. */
  readonly beginBeat: number;
  readonly endBeat: number;
}

/** The slots without grace notes, in columns: one entry a main slot. */
export interface MainSlots {
  readonly length: number;
  /** Index of the slot in the list handed in. */
  readonly slot: Int32Array;
  /** Beats from the first beat of the sheet. */
  readonly beat: Float64Array;
  /** Beats from the first beat of the repeat. */
  readonly position: Float64Array;
  readonly line: Int32Array;
  readonly accent: Uint8Array;
  /** Grace notes written before it. */
  readonly graces: Uint8Array;
  /** Beats to the nearest neighbour in the same line: the space a stroke has. */
  readonly room: Float64Array;
  /** Beats that scatter is a share of: a lone stroke's room counts by its root, since players subdivide. */
  readonly space: Float64Array;
  /** Slots with an equal signature have the same line and rhythm ahead of them. */
  readonly signature: Int32Array;
  readonly bar: Int32Array;
  readonly bars: readonly Bar[];
  /** First bar of each line, and of each line's last repeat. */
  readonly lineBar: readonly number[];
  readonly lastRepeatBar: readonly number[];
  /** Seconds per beat asked of each line, or null. */
  readonly asked: readonly (number | null)[];
}

/** Steps to slots ahead that make up a signature: no fewer than `look-ahead.ts` looks at. */
const signatureSteps = 10;

const rhythmAhead = (beat: Float64Array, line: Int32Array, from: number): string => {
  const gaps: string[] = [];
  for (
    let i = from;
    i < Math.min(from + signatureSteps, beat.length - 1) && line[i + 1] === line[from];
    i++
  ) {
    gaps.push((beat[i + 1]! - beat[i]!).toFixed(4));
  }
  return `${line[from]}:${gaps.join(' ')}`;
};

/** Puts the slots that are not grace notes into columns and marks bars, repeats and lines. */
export const mainSlots = (slots: readonly Slot[], sheet: Sheet): MainSlots => {
  const mains = slots.filter((slot) => !slot.grace);
  const n = mains.length;
  const beat = Float64Array.from(mains, (slot) => slot.beatTime);
  const line = Int32Array.from(mains, (slot) => slot.line);
  const graces = new Uint8Array(n);
  const room = new Float64Array(n);
  const bar = new Int32Array(n);
  const signature = new Int32Array(n);
  const bars: Bar[] = [];
  const lineBar: number[] = [];
  const lastRepeatBar: number[] = [];
  const signatures = new Map<string, number>();
  for (let i = 0; i < n; i++) {
    const slot = mains[i]!;
    const before = mains[i - 1];
    const after = mains[i + 1];
    for (let g = slot.index - 1; slots[g]?.grace; g--) graces[i]!++;
    const toBefore = before?.line === slot.line ? slot.beatTime - before.beatTime : Number.POSITIVE_INFINITY;
    const toAfter = after?.line === slot.line ? after.beatTime - slot.beatTime : Number.POSITIVE_INFINITY;
    const nearest = Math.min(toBefore, toAfter);
    room[i] = Number.isFinite(nearest) ? nearest : 1;
    const ahead = rhythmAhead(beat, line, i);
    if (!signatures.has(ahead)) signatures.set(ahead, signatures.size);
    signature[i] = signatures.get(ahead)!;
    const startsLine = before?.line !== slot.line;
    const startsRepeat = startsLine || before?.repeat !== slot.repeat;
    if (startsRepeat || before?.bar !== slot.bar) {
      if (startsLine) lineBar[slot.line] = bars.length;
      if (startsRepeat) lastRepeatBar[slot.line] = bars.length;
      const beginBeat = slot.beatTime - slot.position + slot.beat;
      bars.push({
        first: i,
        last: i,
        line: slot.line,
        startsRepeat,
        startsLine,
        beginBeat,
        endBeat: beginBeat,
      });
    }
    bar[i] = bars.length - 1;
    const endBeat = slot.beatTime - slot.position + slot.beat + 1;
    bars[bars.length - 1] = { ...bars[bars.length - 1]!, last: i, endBeat };
  }
  const usual = n > 0 ? median(room) : 1;
  return {
    length: n,
    slot: Int32Array.from(mains, (slot) => slot.index),
    beat,
    position: Float64Array.from(mains, (slot) => slot.position),
    line,
    accent: Uint8Array.from(mains, (slot) => (slot.accent ? 1 : 0)),
    graces,
    room,
    space: room.map((value) => Math.min(value, Math.sqrt(value * usual))),
    signature,
    bar,
    bars,
    lineBar,
    lastRepeatBar,
    asked: sheet.lines.map(({ bpm }) => (bpm === null ? null : 60 / bpm)),
  };
};
