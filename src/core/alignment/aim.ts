import type { StepKind } from './paths.ts';
import { bounceReach, graceAtLeast, graceWithin, prices } from './prices.ts';
import { beam, reach, type Search } from './search.ts';

/**
 * Gains of the beat tracker once it has settled: share of a deviation taken into phase and tempo. Measured on 120
 * simulated takes: half or twice the first is worse; half of the second aligns the same, twice is worse.
 */
const phaseGain = 0.4;
const tempoGain = 0.08;
/** Strokes after which it has. Measured on the same takes: 20 to 80 align the same. */
const settledAfter = 40;
/**
 * Uncertainty of a due time per second waited for it: the tempo may have moved. Measured: twice aligns the same, half
 * worse.
 */
const tempoUnrest = 0.02;
/** Logarithm of the height of Student's t distribution with four degrees of freedom. */
const heightOfT4 = Math.log(0.375);

/** Price of the strokes between two matched ones: bounces of the first, grace notes of the second, extras. */
const between = (
  search: Search,
  from: number,
  to: number,
  fromSlot: number,
  slot: number,
  period: number,
): number => {
  const { times, main, spacing, stray } = search;
  let price = 0;
  let last = to - 1;
  let graces = main.graces[slot]!;
  for (; last > from && graces > 0; last--, graces--) {
    const ahead = times[to]! - times[last]!;
    if (ahead < graceAtLeast || ahead > graceWithin) break;
    price += prices.gracePlayed;
  }
  price += graces * prices.graceMissed;
  if (last === from) return price;
  const within = bounceReach(main.room[fromSlot]! * period);
  const bounce = stray.bounce + Math.log(spacing / within);
  for (let i = from + 1; i <= last; i++) {
    price += times[i]! - times[from]! < within ? bounce : stray.extra;
  }
  return price;
};

/**
 * Offers a path's next step, to a slot due at a time after waiting for it (s), to every stroke within half a slot of
 * the due time; `putIn` strokes between are explained by the step itself. Its timing counts by Student's t
 * distribution; the path's phase and tempo follow by an alpha-beta tracker whose gains start as those of a
 * least-squares line and end at a floor (Kalata 1984 for the family). Called a million times for a long take, hence
 * plain arguments and early ends.
 */
export const aim = (
  search: Search,
  node: number,
  slot: number,
  due: number,
  waited: number,
  period: number,
  price: number,
  kind: StepKind,
  putIn = 0,
): void => {
  const { paths, times, main, scatter, spacing, strokes } = search;
  const from = paths.stroke[node]!;
  const half = 0.5 * main.room[slot]! * period;
  let j = from + 1;
  const last = Math.min(strokes - 1, from + reach);
  while (j <= last && times[j]! < due - half) j++;
  if (j > last || times[j]! > due + half) return;
  const base = paths.score[node]! + price;
  const fromSlot = paths.slot[node]!;
  const settled = paths.settled[node]!;
  const strokeScale = scatter * main.space[slot]! * period;
  const tempoScale = tempoUnrest * waited;
  const scale = Math.sqrt(strokeScale * strokeScale + tempoScale * tempoScale);
  const relative = spacing / scale;
  for (; j <= last && times[j]! <= due + half; j++) {
    const deviation = times[j]! - due;
    const off = deviation / scale;
    const tail = 1 + (off * off) / 4;
    const total =
      base +
      heightOfT4 +
      Math.log(relative / (tail * tail * Math.sqrt(tail))) +
      (j - from > 1 || main.graces[slot]! > 0 ? between(search, from, j, fromSlot, slot, period) : 0) -
      Math.min(putIn, j - from - 1) * search.stray.extra +
      search.level(j, slot);
    if (total < paths.bestAt(j) - beam || total <= paths.scoreAt(j, slot)) continue;
    const growing = (settled + 1) * (settled + 2);
    const unrest = tempoScale / scale;
    const phase = Math.max(phaseGain, (2 * (2 * settled + 1)) / growing, unrest * unrest);
    const tempo = Math.max(tempoGain, 6 / growing);
    // Half the bound is worse on simulated takes, twice the same.
    const bounded = Math.max(-3 * scale, Math.min(3 * scale, deviation));
    const beats = Math.max(main.room[slot]!, waited / period);
    const followed = Math.min(settled + 1, settledAfter);
    paths.offer(
      j,
      slot,
      total,
      node,
      kind,
      due + phase * bounded,
      period + (tempo * bounded) / beats,
      followed,
    );
  }
};
