import { readAt } from '../signal/fractional-read.ts';
import type { Source } from '../signal/source.ts';
import { quantile } from '../stats/quantile.ts';
import { clearSeconds } from './clear-seconds.ts';
import { type ClickClock, type ClickReading, fitClock, timeOn } from './click-clock.ts';
import { matchSeconds } from './click-match.ts';
import { type Attack, soundLead } from './click-seed.ts';
import type { ClickTimes } from './click-times.ts';
import { type ClickVoice, longestSound } from './find-clicks.ts';
import { commonSound } from './put-click-sound.ts';
import { onOneClock, putClickStart, readClicks } from './put-clicks.ts';
import { likelyDelays } from './put-delays.ts';
import { withoutClicks } from './without-clicks.ts';

/** Clicks that were put out, found in a recording. */
interface PutClicks {
  readonly clock: ClickClock;
  /** Of every kind whose sound was learned. */
  readonly voices: readonly ClickVoice[];
  /** Whether each kind's was: what wasn't is still in the recording. */
  readonly whole: boolean;
}

/**
 * Attacks tried as the first reading for each delay and kind, and how near to the delay they lie, s. Measured, as the
 * next: half to twice finds alike.
 */
const seeds = { most: 4, within: 0.0006 };
/** Readings after which no better are looked for, those that tell a clock, and clicks from which a sound is learned. */
const enough = { sure: 12, fewest: 3, learned: 4 };
/** Clicks of a kind that may be the first to be read. */
const firstClicks = 64;
/** So far from what was read (s) clocks can't have run apart much. */
const nearSeconds = 20;
/** How often every sound is learned, each time with what is known of the others taken off. */
const rounds = 2;
/** A click that begins so shortly before the end, s, isn't looked at. */
const tail = 0.02;

/**
 * Finds clicks that were put out at known times by their delay and the rate of the clocks, and learns the sound of each
 * kind: the page's own, in a loudspeaker that the microphone hears. Their tempo may change, and some of them may lie under
 * strokes; that they sound alike at times that agree is what no player does. Null where they aren't heard. `attacks` in
 * order of time. Linear in the number of clicks.
 */
export function findPutClicks(
  source: Source,
  attacks: readonly Attack[],
  clicks: readonly ClickTimes[],
): PutClicks | null {
  const duration = source.length / source.sampleRate;
  const begun = firstReadings(source, attacks, clicks);
  if (begun === null) return null;
  const { clock, read } = allReadings(source, attacks, clicks, begun);
  if (!onOneClock(read)) return null;
  const sounding = clicks.map(({ times }) => times.filter((put) => timeOn(clock, put) < duration - tail));
  const voices = learnVoices(
    source,
    attacks,
    sounding.map((times) => times.map((put) => timeOn(clock, put))),
  );
  return { clock, ...voices };
}

/**
 * The sounds of clicks, by kind, at these times (s): the most frequent first, each with the others taken off, since one
 * rings into the next.
 */
function learnVoices(
  source: Source,
  attacks: readonly Attack[],
  kinds: readonly (readonly number[])[],
): Pick<PutClicks, 'voices' | 'whole'> {
  const { sampleRate, length } = source;
  const kept = kinds.map((times) => times.length).filter((count) => count > 0).length;
  const order = kinds.flatMap((times, kind) => (times.length >= enough.learned ? [kind] : []));
  order.sort((a, b) => kinds[b]!.length - kinds[a]!.length);
  const voices = new Map<number, ClickVoice>();
  for (let round = 0; round < rounds; round++) {
    for (const kind of order) {
      const times = kinds[kind]!;
      voices.delete(kind);
      const alone = withoutClicks(source, { voices: [...voices.values()] });
      const starts = times.map((time) => time - soundLead);
      const sound = commonSound(alone, starts, Math.round(longestOf(times) * sampleRate));
      const seconds = (sound.findLastIndex((x) => x !== 0) + 1) / sampleRate;
      const clear = times.some((time) => clearSeconds(time, attacks, length / sampleRate) >= seconds);
      voices.set(kind, { sound, times, learnedFrom: times.length, heardAlone: clear });
    }
  }
  return { voices: [...voices.values()], whole: voices.size === kept };
}

/** How much of a kind's sound can be told from the next click of that kind, s. */
function longestOf(times: readonly number[]): number {
  const apart = times.slice(1).map((time, i) => time - times[i]!);
  return Math.max(matchSeconds, Math.min(longestSound.seconds, longestSound.share * quantile(apart, 0.9)));
}

/** The kind that is read most often, from one of its clicks that is an attack of its own. */
function firstReadings(
  source: Source,
  attacks: readonly Attack[],
  clicks: readonly ClickTimes[],
): { readonly kind: number; readonly read: readonly ClickReading[] } | null {
  const { sampleRate } = source;
  const duration = source.length / sampleRate;
  let best: {
    readonly kind: number;
    readonly read: readonly ClickReading[];
    readonly weight: number;
  } | null = null;
  for (const delay of likelyDelays(clicks, attacks)) {
    for (const [kind, { times: all }] of clicks.entries()) {
      const times = all.slice(0, firstClicks);
      const until = (times.at(-1) ?? 0) + delay + seeds.within;
      const end = attacks.findIndex(({ time }) => time > until);
      const early = end < 0 ? attacks : attacks.slice(0, end);
      const tried = times
        .flatMap((put) => {
          const attack = early.find(({ time }) => Math.abs(time - put - delay) < seeds.within);
          return attack === undefined ? [] : [{ put, time: attack.time }];
        })
        .map((seed) => ({ ...seed, clear: clearSeconds(seed.time, attacks, duration) }))
        .sort((a, b) => b.clear - a.clear)
        .slice(0, seeds.most);
      for (const { put, time } of tried) {
        const sound = readAt(source, time - soundLead, Math.round(matchSeconds * sampleRate));
        const read = readClicks(source, times, sound, { clock: { delay: time - put, rate: 1 }, from: put });
        const weight = read.length * Math.hypot(...sound);
        if (weight > (best?.weight ?? 0) && onOneClock(read)) best = { kind, read, weight };
        if ((best?.read.length ?? 0) >= enough.sure) return best;
      }
    }
  }
  return best;
}

/** Every kind read, first near what was read before, then all through with what each has in common. */
function allReadings(
  source: Source,
  attacks: readonly Attack[],
  clicks: readonly ClickTimes[],
  begun: { readonly kind: number; readonly read: readonly ClickReading[] },
): { readonly clock: ClickClock; readonly read: readonly ClickReading[] } {
  let pool = begun.read;
  for (const [kind, { times }] of clicks.entries()) {
    if (kind === begun.kind) continue;
    const clock = fitClock(pool);
    const [first, last] = [pool[0]!.put, pool.at(-1)!.put];
    const near = times.filter((put) => put > first - nearSeconds && put < last + nearSeconds);
    if (near.length === 0) continue;
    const sound = putClickStart(source, near, clock, attacks);
    const read = readClicks(source, times, sound, { clock, from: last });
    const more = [...pool, ...read].sort((a, b) => a.put - b.put);
    if (read.length >= enough.fewest && onOneClock(more)) pool = more;
  }
  const roughly = fitClock(pool);
  const read = clicks.flatMap(({ times }) => {
    const sound = putClickStart(source, times, roughly, attacks);
    return readClicks(source, times, sound, { clock: roughly, from: times[0] ?? 0 });
  });
  return { clock: fitClock(read), read };
}
