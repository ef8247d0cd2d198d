import { seeded } from '../../fixtures/generator/random.ts';
import { layOut } from '../../src/core/exercise/lay-out.ts';
import { lineFromText } from '../../src/core/exercise/line-from-text.ts';
import { risingSheet, type TempoRise } from '../../src/core/exercise/rising-sheet.ts';
import type { Slot } from '../../src/core/exercise/slot.ts';
import type { PadNote } from '../../src/core/onsets/note-hearing.ts';

/** The exercise at each tempo of a rise. */
export function risingExercise(rise: TempoRise, repeats: number) {
  const parsed = lineFromText('>RLR >LRL', { repeats });
  if (!parsed.ok) throw new Error('no line');
  return risingSheet(parsed.line, rise);
}

export interface Playing {
  /** Scatter of each stroke, s, by the tempo of its line. */
  readonly scatter: (bpm: number) => number;
  /** Whether a stroke is left out. */
  readonly drops?: (slot: Slot, bpm: number) => boolean;
  /** Slots after which nothing is played any more. */
  readonly until?: number;
}

/** A take of a rising sheet as the notes of a pad, played with independent scatter round the even places. */
export function playRising(
  sheet: ReturnType<typeof risingExercise>,
  { scatter, drops = () => false, until = Number.POSITIVE_INFINITY }: Playing,
  seed: number,
): { readonly notes: PadNote[]; readonly duration: number } {
  const slots = layOut(sheet);
  const { normal } = seeded(seed);
  const notes = slots.flatMap((slot): PadNote[] => {
    const { bpm } = sheet.lines[slot.line]!;
    const off = scatter(bpm!) * normal();
    const level = Math.round(3 * normal());
    if (slot.index > until || drops(slot, bpm!)) return [];
    return [
      { time: 1 + slot.time! + off, velocity: (slot.accent ? 110 : 50) + level, key: 38, step: 0.0001 },
    ];
  });
  return { notes, duration: notes.at(-1)!.time + 1 };
}
