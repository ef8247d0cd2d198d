import type { Source } from '../signal/source.ts';
import { clearSeconds, wobble } from './clear-seconds.ts';
import { type ClickClock, type ClickReading, fitClock, timeOn } from './click-clock.ts';
import { type ClickMatch, matchClick, matchSeconds } from './click-match.ts';
import { type Attack, soundLead } from './click-seed.ts';
import { learnClickSound } from './click-sound-learned.ts';

/** How well a click must lie to count as surely heard, and the gain it may have. */
const strict = { correlation: 0.93, gain: [0.8, 1.25] as const };
/** Strokes taken for clicks lie anywhere within the wobble; how unlikely it must be that chance lies so close. */
const chanceOfStrokes = 1e-3;
const readingSeconds = 0.00001;
/** Last readings that tell where the next one is due. */
const lastReadings = 16;

const isStrict = ({ correlation, gain }: ClickMatch) =>
  correlation > strict.correlation && gain > strict.gain[0] && gain < strict.gain[1];

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
      if (!isStrict(match)) continue;
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
  const free = readings.length - 2;
  const squares = readings.reduce((sum, { put, time }) => sum + (time - timeOn(clock, put)) ** 2, 0);
  const scatter = Math.sqrt(squares / free);
  return scatter < readingSeconds || (scatter / (wobble / Math.sqrt(3))) ** free < chanceOfStrokes;
}

/** Learns `seconds` of the sound that clicks put out at `times` have in common; its first milliseconds unless said. */
export function soundOf(
  source: Source,
  times: readonly number[],
  { clock, attacks, seconds = matchSeconds }: SoundAsked,
): { readonly sound: Float32Array; readonly clear: number } {
  const duration = source.length / source.sampleRate;
  const places = times.map((put) => {
    const onset = timeOn(clock, put);
    return { start: onset - soundLead, clear: clearSeconds(onset, attacks, duration) };
  });
  const sound = learnClickSound(source, places, Math.round(seconds * source.sampleRate));
  return { sound, clear: places.reduce((most, { clear }) => Math.max(most, clear), 0) };
}

interface SoundAsked {
  readonly clock: ClickClock;
  /** In order of time. */
  readonly attacks: readonly Attack[];
  readonly seconds?: number;
}
