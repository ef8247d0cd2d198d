import { median } from '../stats/median.ts';
import type { Stroke } from './stroke.ts';

/** Intervals before an end that make its row, the share of them that must be even, and how far one may be from the usual. */
const before = { intervals: 6, share: 0.7, uneven: 0.25 };
/** Sure strokes within this many usual intervals after it go on with the row: no end. */
const goesOn = 3.3;
/** What lies further under the softest of the row is left of a click or a distant sound, dB. */
const underSoftestDb = 12;
/** Taps after the last sure stroke: as many as may follow an accent in one beat, our judgement. */
const mostLast = 3;

/**
 * Which attacks end a row of strokes: after its last sure one at its own interval, one after another. Such a tap has
 * no stroke behind it to show that the row goes on, and it sounds in the tail of the accent before. Attacks in order of
 * time (s), with levels (dBFS) and whether each is surely a stroke; linear.
 *
 * @example rowEnds([0, 0.2, 0.4, 0.6, 0.8, 1, 1.2, 1.4].map((time) => ({ time, levelDb: 0 })), (i) => i < 7)[7] // true
 */
export function rowEnds(
  attacks: readonly Pick<Stroke, 'time' | 'levelDb'>[],
  isSure: (i: number) => boolean,
): readonly boolean[] {
  const ends = attacks.map(() => false);
  const nextSure = attacks.map(() => Number.POSITIVE_INFINITY);
  for (let i = attacks.length - 2; i >= 0; i--)
    nextSure[i] = isSure(i + 1) ? attacks[i + 1]!.time : nextSure[i + 1]!;
  attacks.forEach(({ time }, last) => {
    if (last < before.intervals || !isSure(last)) return;
    const row = Array.from(
      { length: before.intervals },
      (_, n) => attacks[last - n]!.time - attacks[last - n - 1]!.time,
    );
    const usual = median(row);
    const isUsual = (interval: number) => Math.abs(interval - usual) < before.uneven * usual;
    if (row.filter(isUsual).length < before.share * before.intervals) return;
    if (nextSure[last]! - time < goesOn * usual) return;
    const levels = attacks.slice(last - before.intervals, last + 1).map(({ levelDb }) => levelDb);
    const softest = Math.min(...levels);
    for (let i = last + 1; i <= last + mostLast && i < attacks.length; i++) {
      if (!isUsual(attacks[i]!.time - attacks[i - 1]!.time) || attacks[i]!.levelDb < softest - underSoftestDb)
        return;
      ends[i] = true;
    }
  });
  return ends;
}
