import { median } from '../stats/median.ts';
import { binSeconds } from './quiet-course.ts';

/** A fall is held against the one before it, both over this time, s: a gate that closes fast does so within it. */
const fallSeconds = 0.018;
/** The stroke's own beginning is left out, s. */
const fromSeconds = 0.012;
/** The flicker of 16 bits, under which nothing falls, dB of the mean square step. */
const lastBitDb = -91;
/**
 * Such falls, dB, in this share of sounds. A tenth of the clean sounds of soft pads and of toms in bare rooms, whose
 * modes beat, fall by up to 9.5; what gates cut off by 13 to 20 (`reports/recording-check.md`).
 */
const sudden = { leastDb: 13, share: 0.12, fewest: 5 };

/** By how much a sound falls further in 18 ms than in the 18 ms before, dB. */
function suddenFallDb(heardDb: readonly number[]): number {
  const courseDb = heardDb.map((level) => Math.max(level, lastBitDb));
  const width = Math.round(fallSeconds / binSeconds);
  let most = 0;
  for (let i = width + Math.round(fromSeconds / binSeconds); i + width < courseDb.length; i++) {
    const fell = Math.max(0, courseDb[i - width]! - courseDb[i]!);
    most = Math.max(most, courseDb[i]! - courseDb[i + width]! - fell);
  }
  return most;
}

/**
 * How far sounds fall at a stroke, dB, where enough of them do so as only a gate that closes fast makes them; 0
 * elsewhere. Not every sound has to: another stroke may come first.
 *
 * @param decaysDb Levels of each sound from its onset on, dB, a bin of 6 ms after the other.
 */
export function suddenFallsDb(decaysDb: readonly (readonly number[])[]): number {
  const falls = decaysDb.filter(({ length }) => length >= 10).map(suddenFallDb);
  if (falls.length < sudden.fewest) return 0;
  const some = falls.filter((fall) => fall >= sudden.leastDb);
  return some.length >= Math.max(sudden.fewest, sudden.share * falls.length) ? median(some) : 0;
}
