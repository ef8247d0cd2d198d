import type { SilentStretch } from '../click-track/silent-stretches.ts';

/**
 * How long after a silence a player may find back to the click, s: two beats at 80, and the delay of an output that
 * isn't measured. So much before its end as well: a stroke may be early. Our judgement.
 */
const after = 1.8;
const before = 0.2;

/**
 * Tells of each stroke, by its index, whether the click has just come back when it comes.
 *
 * @example afterSilence([{ from: 4, to: 8 }], Float64Array.of(7, 8.1, 12))(1) // true
 */
export const afterSilence = (
  silences: readonly SilentStretch[],
  times: Float64Array,
): ((stroke: number) => boolean) => {
  const back = new Uint8Array(times.length);
  let stroke = 0;
  for (const { to } of silences) {
    while (stroke < times.length && times[stroke]! < to - before) stroke++;
    for (; stroke < times.length && times[stroke]! < to + after; stroke++) back[stroke] = 1;
  }
  return (index) => back[index] === 1;
};
