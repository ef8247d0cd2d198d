import type { HeardClick } from '../onsets/stroke.ts';
import { median } from '../stats/median.ts';

/** Whether no more than one tempo is known of a click: that of a played one may change from line to line. */
const keepsTempo = ({ times, played, changes }: HeardClick): boolean =>
  (played === undefined && !changes) || times.length < 2;

/** Seconds between clicks before the first and after the last. */
const beyond = (click: HeardClick): { readonly before: number; readonly after: number } => {
  const { times, period } = click;
  return keepsTempo(click)
    ? { before: period, after: period }
    : { before: times[1]! - times[0]!, after: times.at(-1)! - times.at(-2)! };
};

/**
 * Place of a time among the clicks: 2.25 is a quarter of the way from the third click to the fourth. The click is
 * taken to go on evenly before its first and after its last time. At least one time is needed.
 */
export const placeAmong = (click: HeardClick, time: number): number => {
  const { times } = click;
  const last = times.length - 1;
  if (time <= times[0]!) return (time - times[0]!) / beyond(click).before;
  if (time >= times[last]!) return last + (time - times[last]!) / beyond(click).after;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (times[middle]! <= time) low = middle;
    else high = middle;
  }
  return low + (time - times[low]!) / (times[high]! - times[low]!);
};

/** Time of a place among the clicks, s; the inverse of `placeAmong`. */
export const timeOfPlace = (click: HeardClick, place: number): number => {
  const { times } = click;
  const last = times.length - 1;
  if (place <= 0) return times[0]! + place * beyond(click).before;
  if (place >= last) return times[last]! + (place - last) * beyond(click).after;
  const low = Math.floor(place);
  return times[low]! + (place - low) * (times[low + 1]! - times[low]!);
};

/**
 * After its last click a beat stands for this many clicks more, before its first one for as many less. Our judgement.
 */
const standsFor = 0.9;

/**
 * Whether a click may be sounding at a time: not where it is known to be silent before its first or after its last.
 *
 * @example soundsAt({ times: [1, 2], period: 1, levelDb: 0, silent: { before: true, after: true } }, 3) // false
 */
export const soundsAt = ({ times, period, silent }: HeardClick, time: number): boolean =>
  !(silent?.before && time < times[0]! - standsFor * period) &&
  !(silent?.after && time > times.at(-1)! + standsFor * period);

/** Intervals on either side of a time that tell a changing click's tempo there. Our judgement. */
const reach = 3;

/**
 * Seconds between clicks round a time.
 *
 * @example periodNear({ times: [0, 1, 2, 2.5, 3], period: 1, levelDb: 0, played: { delaySe: 0 } }, 0.5) // 1
 */
export const periodNear = (click: HeardClick, time: number): number => {
  const { times, period } = click;
  if (keepsTempo(click)) return period;
  const before = Math.min(times.length - 2, Math.max(0, Math.floor(placeAmong(click, time))));
  const own = times[before + 1]! - times[before]!;
  const near: number[] = [];
  for (let i = Math.max(0, before - reach); i <= Math.min(times.length - 2, before + reach); i++) {
    const interval = times[i + 1]! - times[i]!;
    if (Math.abs(interval / own - 1) < 0.1) near.push(interval);
  }
  return median(near);
};
