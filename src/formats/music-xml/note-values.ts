/** How one of so many equal parts of a quarter is written: its note value, and the tuplet it belongs to. */
interface NoteValue {
  readonly type: 'quarter' | 'eighth' | '16th' | '32nd';
  /** So many in the time of so many plain ones; null without a tuplet. */
  readonly tuplet: { readonly actual: number; readonly normal: number } | null;
  /** Beams that join the parts of a beat. */
  readonly beams: number;
}

/**
 * The usual way of writing a quarter in equal parts: a tuplet takes the note value of the next smaller plain division
 * (three eighths in the time of two, five to seven sixteenths in the time of four). RangeError outside 1 … 12.
 *
 * @example noteValue(3) // { type: 'eighth', tuplet: { actual: 3, normal: 2 }, beams: 1 }
 */
export function noteValue(parts: number): NoteValue {
  if (!Number.isInteger(parts) || parts < 1 || parts > 12) throw new RangeError(`${parts} parts of a beat`);
  const normal = parts >= 8 ? 8 : parts >= 4 ? 4 : parts >= 2 ? 2 : 1;
  const type = ({ 1: 'quarter', 2: 'eighth', 4: '16th', 8: '32nd' } as const)[normal];
  return {
    type,
    tuplet: parts === normal ? null : { actual: parts, normal },
    beams: Math.log2(normal),
  };
}
