import type { HeardClick } from '../onsets/stroke.ts';

/**
 * Place of a time among the clicks: 2.25 is a quarter of the way from the third click to the fourth. The click is
 * taken to go on evenly before its first and after its last time. At least one time is needed.
 */
export const placeAmong = ({ times, period }: HeardClick, time: number): number => {
  const last = times.length - 1;
  if (time <= times[0]!) return (time - times[0]!) / period;
  if (time >= times[last]!) return last + (time - times[last]!) / period;
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
export const timeOfPlace = ({ times, period }: HeardClick, place: number): number => {
  const last = times.length - 1;
  if (place <= 0) return times[0]! + place * period;
  if (place >= last) return times[last]! + (place - last) * period;
  const low = Math.floor(place);
  return times[low]! + (place - low) * (times[low + 1]! - times[low]!);
};
