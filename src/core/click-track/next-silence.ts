/** How far off a player was when the click came back. */
interface Hold {
  /** s by which the strokes had moved against the beat since the click was last heard; the sign doesn't matter. */
  readonly offSeconds: number;
  /** s of a beat. */
  readonly beatSeconds: number;
}

/** Bars of the longest silence. Our judgement. */
export const longestSilence = 8;

/**
 * Shares of a beat off up to which a silence counts as held, and from which it counts as lost: 30 and 75 ms at 120, the
 * second a little under half a triplet's partial, from where a stroke could be the next one's. Our judgement.
 */
const heldWithin = 0.06;
const lostFrom = 0.15;

/**
 * Bars of the next silence: twice as many after one that was held, half as many after one that was lost, as many again
 * between the two and where nothing could be measured. Between one bar and eight.
 *
 * @example nextSilence(2, { offSeconds: 0.01, beatSeconds: 0.5 }) // 4
 */
export function nextSilence(bars: number, hold: Hold | null): number {
  if (hold === null) return bars;
  const off = Math.abs(hold.offSeconds) / hold.beatSeconds;
  if (off <= heldWithin) return Math.min(longestSilence, bars * 2);
  return off < lostFrom ? bars : Math.max(1, Math.floor(bars / 2));
}
