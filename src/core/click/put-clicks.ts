import type { Source } from '../signal/source.ts';
import { clearSeconds, wobble } from './clear-seconds.ts';
import { type ClickClock, type ClickReading, fitClock, timeOn } from './click-clock.ts';
import { isSure, matchClick, matchSeconds } from './click-match.ts';
import { type Attack, soundLead } from './click-seed.ts';
import { learnClickSound } from './click-sound-learned.ts';
import { closerThanChance } from './closer-than-chance.ts';

/** Last readings that tell where the next one is due. */
const lastReadings = 16;

/**
 * Reads the clicks put out at `times` that surely sound like `sound` (its start, from `soundLead` before the onset on),
 * from the one nearest to `from` to both ends, where the readings before say that they are due.
 */
export function readClicks(
  source: Source,
  times: readonly number[],
  sound: Float32Array,
  { clock, from }: { readonly clock: ClickClock; readonly from: number },
): ClickReading[] {
  const first = times.findIndex((time) => time >= from);
  const middle = first < 0 ? times.length : first;
  const follow = (later: readonly number[]) => {
    const read: ClickReading[] = [];
    let due = clock;
    for (const put of later) {
      const match = matchClick(source, sound, timeOn(due, put) - soundLead, wobble);
      if (!isSure(match)) continue;
      read.push({ put, time: match.time + soundLead });
      if (read.length >= 3) due = fitClock(read.slice(-lastReadings));
    }
    return read;
  };
  return [...follow(times.slice(0, middle).reverse()).reverse(), ...follow(times.slice(middle))];
}

/** Whether readings lie closer to one clock than strokes that happen to fall near would. */
export function onOneClock(readings: readonly ClickReading[]): boolean {
  if (readings.length < 3) return false;
  const clock = fitClock(readings);
  return closerThanChance(readings.map(({ put, time }) => time - timeOn(clock, put)));
}

/** The first milliseconds that clicks put out at `times` have in common; `attacks` in order of time. */
export function putClickStart(
  source: Source,
  times: readonly number[],
  clock: ClickClock,
  attacks: readonly Attack[],
): Float32Array {
  const duration = source.length / source.sampleRate;
  const places = times.map((put) => {
    const onset = timeOn(clock, put);
    return { start: onset - soundLead, clear: clearSeconds(onset, attacks, duration) };
  });
  return learnClickSound(source, places, Math.round(matchSeconds * source.sampleRate));
}
