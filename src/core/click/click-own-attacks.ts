import { readAt } from '../signal/fractional-read.ts';
import type { Source } from '../signal/source.ts';
import { matchClick, matchSeconds } from './click-match.ts';
import { type Attack, soundLead } from './click-seed.ts';

/**
 * A click's own second attack follows every click by the same time within this, s; strokes scatter by milliseconds.
 * Measured, as what follows: half to twice finds the same clicks and strokes in 12 takes with clicks.
 */
const evenness = 0.0002;
/** How soon and how late after the onset there may be one, s: a tone that breaks off, a first echo. */
const reach = { from: 0.008, to: 0.2 };
/** So many clicks must have it, with the same sound: two strokes of a hand reach a correlation of 0.95. */
const enough = { clicks: 3, correlation: 0.97 };
const likeLevelDb = 2.5;
/** Clicks in which such attacks are looked for: a count-in is heard alone. */
const mostClicks = 48;

interface After extends Attack {
  /** s after a click's onset. */
  readonly delay: number;
}

/**
 * The attacks (in order of time) without those that are the clicks' own: a tone that breaks off is an attack too, and
 * follows every click by the same time with the same sound, as no stroke does. `onsets` of the clicks in order, s.
 * Linear in their number.
 *
 * @example withoutOwnAttacks(source, [1, 1.5, 2], attacks) // without those at 1.03, 1.53 and 2.03, where beeps end
 */
export function withoutOwnAttacks(
  source: Source,
  onsets: readonly number[],
  attacks: readonly Attack[],
): readonly Attack[] {
  const some = attacksAfter(onsets.slice(0, mostClicks), attacks).sort((a, b) => a.delay - b.delay);
  const own: After[] = [];
  for (const one of some) {
    if (own.some((other) => isLike(other, one))) continue;
    const like = some.filter((other) => isLike(other, one));
    if (like.length < enough.clicks) continue;
    const sound = readAt(source, one.time - soundLead, Math.round(matchSeconds * source.sampleRate));
    const same = like.filter(
      ({ time }) => matchClick(source, sound, time - soundLead, evenness).correlation > enough.correlation,
    );
    if (same.length >= enough.clicks) own.push(one);
  }
  if (own.length === 0) return attacks;
  const left = new Set(
    attacksAfter(onsets, attacks).flatMap((one) =>
      own.some((other) => isLike(other, one)) ? [one.time] : [],
    ),
  );
  return attacks.filter(({ time }) => !left.has(time));
}

const isLike = (a: After, b: After) =>
  Math.abs(a.delay - b.delay) < evenness && Math.abs(a.levelDb - b.levelDb) < likeLevelDb;

function attacksAfter(onsets: readonly number[], attacks: readonly Attack[]): After[] {
  const after: After[] = [];
  let low = 0;
  for (const onset of onsets) {
    while (low < attacks.length && attacks[low]!.time < onset + reach.from) low++;
    for (let i = low; i < attacks.length && attacks[i]!.time < onset + reach.to; i++)
      after.push({ time: attacks[i]!.time, levelDb: attacks[i]!.levelDb, delay: attacks[i]!.time - onset });
  }
  return after;
}
