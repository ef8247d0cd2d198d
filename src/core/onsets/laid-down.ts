import type { Stroke } from './stroke.ts';

type Attack = Pick<Stroke, 'time' | 'levelDb'>;

/**
 * Something that falls and bounces to rest: ever shorter intervals, at least so many, down to so short, ever softer; the
 * first, which may be an accent before a roll, isn't asked. No bounce is so much louder than the one before (dB). Things in
 * the tests keep 0.8 of an interval and less; of bursts at 60 ms that scatter by 6 one in 40 would shrink by 0.92 four times
 * in a row, one in 170 by 0.87.
 */
const bounces = {
  intervals: 4,
  shrink: 0.87,
  least: 0.4,
  shortest: 0.065,
  fallDb: 4,
  longest: 0.4,
  riseDb: 12,
};

/** An echo: so soon after a louder attack, and so far under it. */
const echo = { seconds: 0.06, underDb: 8 };

/**
 * Which of these attacks belong to a thing bouncing to rest, such as sticks laid down: no exercise has intervals that
 * shrink stroke by stroke. Times in s, in order; levels in dBFS.
 *
 * @example laidDown([{ time: 0, levelDb: -20 }, …]) // [true, …] for a falling stick, all false for a roll
 */
export function laidDown(attacks: readonly Attack[]): boolean[] {
  const isEcho = attacks.map((attack, i) => {
    for (let k = i - 1; k >= 0 && attack.time - attacks[k]!.time < echo.seconds; k--) {
      if (attacks[k]!.levelDb - attack.levelDb > echo.underDb) return true;
    }
    return false;
  });
  const places = [...attacks.keys()];
  const bouncing = (chosen: readonly number[]) => {
    const runs = bouncingRuns(chosen.map((i) => attacks[i]!));
    return chosen.filter((_, i) => runs[i]).map((i) => attacks[i]!.time);
  };
  // The last soft bounces may be as near as echoes, so both readings are tried.
  const times = [...bouncing(places), ...bouncing(places.filter((i) => !isEcho[i]))];
  // The echoes in between go with it.
  return attacks.map(({ time }) => times.some((bounce) => time >= bounce && time < bounce + echo.seconds));
}

/** Whether what follows the last clear bounce goes on as loud and as slowly: a roll whose strokes drew nearer by chance. */
function goesOn(trickle: readonly Attack[]): boolean {
  const [last, ...after] = trickle;
  return (
    after.length >= 2 && after.filter(({ levelDb }) => levelDb > last!.levelDb).length > after.length / 2
  );
}

function bouncingRuns(sounds: readonly Attack[]): boolean[] {
  const marked = sounds.map(() => false);
  let start = 0;
  for (let i = 1; i <= sounds.length; i++) {
    const interval = (k: number) => sounds[k]!.time - sounds[k - 1]!.time;
    const softer = i < sounds.length && sounds[i]!.levelDb - sounds[i - 1]!.levelDb < bounces.riseDb;
    const shrinks =
      softer &&
      i - start >= 2 &&
      interval(i) < bounces.shrink * interval(i - 1) &&
      interval(i) > bounces.least * interval(i - 1);
    const begins = softer && i - start === 1 && interval(i) < bounces.longest;
    if (shrinks || begins) continue;
    const last = i - 1;
    if (
      last - start >= bounces.intervals &&
      interval(last) < bounces.shortest &&
      Math.max(...sounds.slice(start + 1, start + 4).map(({ levelDb }) => levelDb)) - sounds[last]!.levelDb >
        bounces.fallDb
    ) {
      // What still trickles after the last clear bounce is the same thing.
      let end = last;
      while (end + 1 < sounds.length && interval(end + 1) < bounces.shortest) end++;
      if (!goesOn(sounds.slice(last, end + 1))) for (let k = start; k <= end; k++) marked[k] = true;
    }
    // The interval that broke the chain may begin a new one.
    start = i < sounds.length && interval(i) < bounces.longest ? last : i;
    if (start === last && i < sounds.length) i = last + 1;
  }
  return marked;
}
