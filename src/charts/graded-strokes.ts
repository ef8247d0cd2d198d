import type { Hand } from '../core/exercise/sheet.ts';
import type { TakeResult } from '../core/result/take-result.ts';

/** One graded stroke with the place it was played on. */
export interface GradedStroke {
  /** Index into the result's strokes. */
  readonly stroke: number;
  /** Index into the result's slots. */
  readonly slot: number;
  /** s */
  readonly time: number;
  /** ms from the even place, early negative, or null where it isn't measured. */
  readonly deviationMs: number | null;
  readonly levelDb: number;
  /** Null where the hands can't be told. */
  readonly hand: Hand | null;
  readonly partial: number;
  readonly divisions: number;
  readonly accent: boolean;
}

/** The strokes that count in a take, in order of time: matched, on a slot, grace notes left out. */
export function gradedStrokes(result: TakeResult): GradedStroke[] {
  const { strokes, slots } = result;
  const handsTold = result.hands !== 'not-told';
  return strokes.time.flatMap((time, stroke) => {
    const slot = strokes.slot[stroke] ?? null;
    if (strokes.role[stroke] !== 'matched' || slot === null || slots.grace[slot]) return [];
    return [
      {
        stroke,
        slot,
        time,
        deviationMs: strokes.deviationMs[stroke] ?? null,
        levelDb: strokes.levelDb[stroke]!,
        hand: handsTold ? (strokes.hand[stroke] ?? null) : null,
        partial: slots.partial[slot]!,
        divisions: slots.divisions[slot]!,
        accent: slots.accent[slot]!,
      },
    ];
  });
}
