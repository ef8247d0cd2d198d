import type { TakeResult } from './take-result.ts';

/** Sound before a line's first stroke and after its last, s; and no more of it than this. */
const around = { before: 0.4, after: 0.8, most: 25 };

/**
 * From where to where a line was played in its recording, s, with a little around it; null where no stroke of it was
 * heard. `shift`: where the take begins in a longer recording that it was cut from.
 *
 * @example lineStretch(result, 0) // [0.1, 8.4]
 */
export function lineStretch(
  { strokes, slots }: TakeResult,
  place: number,
  shift = 0,
): [number, number] | null {
  const times = strokes.time.filter((_, i) => {
    const slot = strokes.slot[i];
    return slot != null && slots.line[slot] === place;
  });
  if (times.length === 0) return null;
  const from = Math.max(0, times[0]! - around.before);
  const to = Math.min(times.at(-1)! + around.after, from + around.most);
  return [from + shift, to + shift];
}
