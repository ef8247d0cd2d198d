import { anyBetween } from '../stats/any-between.ts';
import type { Stroke } from './stroke.ts';
import { usualInterval } from './usual-interval.ts';

/** How far an interval may be from the usual one, as a share of it. */
const uneven = 0.25;
/** Attacks round one (s) that are looked at, how many there must be, and the share of them that stand evenly. */
const round = { seconds: 1, fewest: 5, share: 0.7 };
/** Sure strokes lie at most this many usual intervals away on both sides. */
const sureWithin = 3.3;

/**
 * Which attacks stand evenly in a row with others and between sure strokes (`sureTimes`, s, ascending): as strokes of
 * an exercise do, and talk or falling sticks don't. Attacks in order of time; linear for a bounded density of them.
 *
 * @example evenRow([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6].map((time) => ({ time })), [0, 0.3, 0.6])[1] // true
 */
export function evenRow(
  attacks: readonly Pick<Stroke, 'time'>[],
  sureTimes: readonly number[],
): readonly boolean[] {
  const usual = attacks.map((_, i) => usualInterval(attacks, i));
  const even = attacks.map(({ time }, i) => {
    const isUsual = (interval: number) => Math.abs(interval - usual[i]!) < uneven * usual[i]!;
    const before = attacks[i - 1];
    const after = attacks[i + 1];
    return !!before && !!after && isUsual(time - before.time) && isUsual(after.time - time);
  });
  let from = 0;
  let to = 0;
  let count = 0;
  return attacks.map(({ time }, i) => {
    while (to < attacks.length && attacks[to]!.time <= time + round.seconds) count += even[to++] ? 1 : 0;
    while (attacks[from]!.time < time - round.seconds) count -= even[from++] ? 1 : 0;
    const reach = sureWithin * usual[i]!;
    return (
      even[i]! &&
      to - from >= round.fewest &&
      count >= round.share * (to - from) &&
      anyBetween(sureTimes, time - reach, time) &&
      anyBetween(sureTimes, time, time + reach)
    );
  });
}
