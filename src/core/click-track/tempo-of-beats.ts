import { median } from '../stats/median.ts';

/** Beats needed before a tempo is told, and those that count: a hand settles, so that only the last ones do. Our judgement. */
const fewest = 3;
const counted = 9;

/** s of silence after which beating begins anew: slower than any tempo that a sheet may have. */
const pause = 6.5;

/**
 * Tempo of beats that somebody taps, in beats per minute: 60 over the median distance of the last nine, so that one
 * beat left out or doubled changes nothing. Null before there are three in a row. `times` in s, rising.
 *
 * @example tempoOfBeats([0, 0.5, 1, 1.5]) // 120
 */
export function tempoOfBeats(times: readonly number[]): number | null {
  const last = times.slice(-counted);
  const steps = last.slice(1).map((time, i) => time - last[i]!);
  const from = steps.findLastIndex((step) => step > pause) + 1;
  const held = steps.slice(from);
  return held.length < fewest - 1 ? null : 60 / median(held);
}
