import type { DueLine } from './due-lines.ts';

/** How a line was held. */
export interface LineHeld {
  /** How near the strokes heard lie to places of the line: 1 on them, about 0.45 where they lie anywhere. */
  readonly places: number;
  /** Strokes heard, and those over the strokes due. */
  readonly strokes: number;
  readonly heard: number;
  /** s by which strokes are heard later than they are due; whole steps don't matter. */
  readonly delay: number;
}

/** Share of a step from its place at which a stroke counts for nothing; less than a half, so that it has one place. Our judgement. */
const reach = 0.35;

/** Places that are tried for the delay between two steps: players scatter by more than a thirty-second of a step. */
const tries = 32;

/**
 * How a line was held, as far as simple hearing can tell while it is played. What isn't heard doesn't count for
 * `places`, since soft taps drown in a room: how near each stroke is to a place, at best 1, at a third of a step 0. All may
 * come later by one delay, looked for within half a step round `near`: which way is taken makes no difference where
 * steps repeat. Strokes are s of the track and rise. Null where nothing is due or heard.
 *
 * @example lineHeld({ due: [2, 2.5, 3, 3.5], step: 0.5, … }, [2.1, 2.6, 3.1, 3.6], 0) // { places: 1, heard: 1, delay: 0.1 }
 */
export function lineHeld(
  { due, graces, step, from, to }: DueLine,
  strokes: readonly number[],
  near: number,
): LineHeld | null {
  const start = from + near - step / 2;
  const inside = strokes.filter((time) => time >= start && time < start + to - from);
  if (due.length === 0 || inside.length === 0) return null;
  let best = { sum: -1, delay: near };
  for (let i = 0; i <= tries; i++) {
    // From the middle outwards: of two that are alike the nearer one.
    const delay = near + ((i % 2 === 0 ? i : -i - 1) / 2 / tries) * step;
    const sum = nearness(inside, due, delay, reach * step);
    if (sum > best.sum + 1e-9) best = { sum, delay };
  }
  // A grace note lies between places, and may be heard or not.
  const placed = Math.max(due.length / 2, inside.length - graces);
  return {
    places: Math.min(1, best.sum / Math.min(placed, inside.length)),
    strokes: inside.length,
    heard: inside.length / (due.length + graces),
    delay: best.delay,
  };
}

/** Sum over times of how near the nearest place is, all places moved by a delay. Both rise. */
function nearness(times: readonly number[], places: readonly number[], delay: number, width: number): number {
  let at = 0;
  let sum = 0;
  const off = (place: number | undefined, time: number) =>
    place === undefined ? Number.POSITIVE_INFINITY : Math.abs(place + delay - time);
  for (const time of times) {
    while (at + 1 < places.length && off(places[at + 1], time) <= off(places[at], time)) at += 1;
    sum += Math.max(0, 1 - off(places[at], time) / width);
  }
  return sum;
}
