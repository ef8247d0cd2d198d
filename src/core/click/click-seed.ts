import { readAt } from '../signal/fractional-read.ts';
import type { Source } from '../signal/source.ts';
import { matchClick, matchSeconds } from './click-match.ts';

/** Three like sounds at equal intervals: where a metronome may be. */
export interface ClickSeed {
  readonly time: number;
  readonly period: number;
  /** The sound's first milliseconds. */
  readonly sound: Float32Array;
}

/** An attack as the search for clicks needs it. */
export interface Attack {
  readonly time: number;
  readonly levelDb: number;
}

/** Seconds between clicks: 250 to 36 a minute. */
export const periods = { shortest: 0.24, longest: 1.67 };
/**
 * Onsets of like clicks are found within this of each other, s; players scatter by several milliseconds. Measured on 12
 * takes with clicks: half finds the same; twice loses a click in seven.
 */
const evenness = 0.0006;
/**
 * Levels of one metronome's clicks agree within this, dB. Measured, as recurrences and pairs: half to twice finds the
 * same.
 */
const likeLevelDb = 2.5;
/** Correlation of two clicks' first milliseconds; two strokes of a hand reach 0.95. */
const likeSound = 0.97;
const sameSound = 0.99;
/** Times that an interval must come for a mere pair to be followed. */
const recurrences = 3;
/** Pairs whose sounds are compared, so that an hour of even playing without a click costs no more than a minute. */
const mostCompared = 250;
/**
 * Sound kept ahead of the onset, s. Measured: half or twice as much leaves one or two more sounds that aren't strokes.
 */
export const soundLead = 0.0008;

/**
 * Where a metronome may be: attacks of like level and sound at equal intervals. First chains of three, then, when the
 * caller still asks, mere pairs of sounds so alike that no two strokes are, whose interval comes again. At most `most`
 * of each, from the first part of the recording that has enough of them.
 */
export function* clickSeeds(source: Source, attacks: readonly Attack[], most: number): Generator<ClickSeed> {
  yield* first(
    most,
    seedsOf(source, attacks, likeSound, (second, period, from) => {
      const third = attackNear(attacks, second.time + period, from);
      return third === null ? null : [second, third];
    }),
  );
  const recurring = recurringIntervals(attacks);
  yield* first(
    most,
    seedsOf(source, attacks, sameSound, (second, period) => (recurring(period) ? [second] : null)),
  );
}

function* first<T>(most: number, values: Iterable<T>): Generator<T> {
  let count = 0;
  for (const value of values) {
    if (count++ >= most) return;
    yield value;
  }
}

/** The attacks that go on with a first and `second` at a period, looked for from an index on; null without them. */
type Companions = (second: Attack, period: number, from: number) => readonly Attack[] | null;

function* seedsOf(
  source: Source,
  attacks: readonly Attack[],
  correlation: number,
  companions: Companions,
): Generator<ClickSeed> {
  let compared = 0;
  for (let i = 0; i < attacks.length && compared < mostCompared; i++) {
    const start = attacks[i]!;
    for (let j = i + 1; j < attacks.length; j++) {
      const second = attacks[j]!;
      const period = second.time - start.time;
      if (period < periods.shortest) continue;
      if (period > periods.longest) break;
      if (Math.abs(second.levelDb - start.levelDb) > likeLevelDb) continue;
      const others = companions(second, period, j + 1);
      if (others === null || others.some(({ levelDb }) => Math.abs(levelDb - start.levelDb) > likeLevelDb))
        continue;
      compared++;
      const sound = readAt(source, start.time - soundLead, Math.round(matchSeconds * source.sampleRate));
      const like = others.every(
        ({ time }) => matchClick(source, sound, time - soundLead, evenness).correlation > correlation,
      );
      if (like) yield { time: start.time, period: (others.at(-1)!.time - start.time) / others.length, sound };
    }
  }
}

/** Whether an interval between attacks comes often enough, to about a third of the evenness. */
function recurringIntervals(attacks: readonly Attack[]): (period: number) => boolean {
  const step = evenness / 4;
  const counts = new Map<number, number>();
  for (let i = 0; i < attacks.length; i++) {
    for (let j = i + 1; j < attacks.length; j++) {
      const period = attacks[j]!.time - attacks[i]!.time;
      if (period < periods.shortest) continue;
      if (period > periods.longest) break;
      const bin = Math.round(period / step);
      counts.set(bin, (counts.get(bin) ?? 0) + 1);
    }
  }
  return (period) => {
    const bin = Math.round(period / step);
    return (counts.get(bin - 1) ?? 0) + (counts.get(bin) ?? 0) + (counts.get(bin + 1) ?? 0) >= recurrences;
  };
}

/** The attack within the evenness of `time`, or null. */
function attackNear(attacks: readonly Attack[], time: number, from: number): Attack | null {
  let low = from;
  let high = attacks.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (attacks[middle]!.time < time - evenness) low = middle + 1;
    else high = middle;
  }
  const attack = attacks[low];
  return attack && attack.time <= time + evenness ? attack : null;
}
