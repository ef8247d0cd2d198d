/** Time between a cut and the stroke behind it, s: before the earliest part of the attack. Our judgement. */
export const beforeStroke = 0.006;

/** Time in which one piece takes over from another, s; it ends before the attack begins. Our judgement. */
export const takeOver = 0.004;

/**
 * Where a sound is cut so that every stroke begins a piece of its own: shortly before each onset. Onsets in s, in
 * order; strokes closer together than a taking over lasts stay in one piece, whose first stroke's index is kept.
 *
 * @example strokeCuts([1, 1.2]) // [{ stroke: 0, at: 0.994 }, { stroke: 1, at: 1.194 }]
 */
export function strokeCuts(onsets: readonly number[]): { readonly stroke: number; readonly at: number }[] {
  const cuts: { stroke: number; at: number }[] = [];
  onsets.forEach((onset, stroke) => {
    const at = onset - beforeStroke;
    const last = cuts.at(-1);
    if (at < 0 || (last !== undefined && at < last.at + beforeStroke + takeOver)) return;
    cuts.push({ stroke, at });
  });
  return cuts;
}
