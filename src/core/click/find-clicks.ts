import { readAt } from '../signal/fractional-read.ts';
import type { Source } from '../signal/source.ts';
import { findBell } from './bell.ts';
import { clearSeconds } from './clear-seconds.ts';
import { fitGrid } from './click-grid.ts';
import { leftOver, matchSeconds } from './click-match.ts';
import { withoutOwnAttacks } from './click-own-attacks.ts';
import { type Attack, clickSeeds, soundLead } from './click-seed.ts';
import { learnClickSound, type Occurrence } from './click-sound-learned.ts';
import { everyClick, follow, followAgain, type HeardAt, halfCovered, isEven } from './follow-clicks.ts';

/** One of a metronome's sounds and the clicks that have it. */
export interface ClickVoice {
  /** From `soundLead` before the click's onset on, at the recording's rate. */
  readonly sound: Float32Array;
  /** Onsets, s. */
  readonly times: readonly number[];
  /** Clicks from which the sound was learned, and whether any of them was heard alone to its end. */
  readonly learnedFrom: number;
  readonly heardAlone: boolean;
}

/** A metronome found in a recording. */
export interface FoundClicks {
  /** Seconds between clicks. */
  readonly period: number;
  /** All onsets in order of time, s. */
  readonly times: readonly number[];
  /** The common sound, then the bell's if there is one. */
  readonly voices: readonly ClickVoice[];
}

/** Surely heard clicks that make a metronome, or do with a bell, and the share of the places between the first and the last. */
const enough = { clicks: 4, withBell: 3, share: 0.12 };
/**
 * Longest sound learned, s, and as a share of what lies between clicks. Measured: half gives alike, more than all is
 * worse.
 */
export const longestSound = { seconds: 0.6, share: 0.92 };
const mostSeeds = 40;
/** Strokes may cover this many clicks in a row at either end. Measured: 8 to 32 find the same, and 20 to 80 seeds. */
const coveredReach = 16;

/**
 * Finds the clicks of a metronome by what no player does: the same sound again and again at times that agree within
 * half a millisecond. Null when there is none.
 */
export function findClicks(source: Source, attacks: readonly Attack[]): FoundClicks | null {
  const duration = source.length / source.sampleRate;
  let best: { readonly heard: HeardAt[]; readonly weight: number } | null = null;
  for (const candidate of clickSeeds(source, attacks, mostSeeds)) {
    const heard = follow(source, candidate, duration);
    // The end of a long click is an attack too, and sometimes clear of strokes more often, but has less in it.
    const weight = heard.length * Math.hypot(...candidate.sound);
    if (heard.length >= enough.withBell && weight > (best?.weight ?? 0) && isEven(heard))
      best = { heard, weight };
    if ((best?.heard.length ?? 0) >= 12) break;
  }
  if (best === null) return null;
  // A seed may have something of a stroke in it: what the clicks found have in common finds the others.
  const more = followAgain(source, best.heard, duration, attacks);
  const sure = more.length > best.heard.length && isEven(more) ? more : best.heard;
  return settle(source, everyClick(source, sure, duration, attacks), duration, attacks);
}

function settle(
  source: Source,
  heard: readonly HeardAt[],
  duration: number,
  attacks: readonly Attack[],
): FoundClicks | null {
  const first = heard[0]!.k;
  const last = heard.at(-1)!.k;
  if (heard.length < enough.share * (last - first + 1)) return null;
  const grid = fitGrid(
    heard.map(({ k, time, correlation }) => ({ k, time, weight: 1 / (1.0005 - correlation) })),
  );
  const length = Math.round(
    Math.min(longestSound.seconds, longestSound.share * grid.period) * source.sampleRate,
  );
  const startLength = Math.round(matchSeconds * source.sampleRate);
  const timeOf = (k: number) => grid.origin + k * grid.period;
  const onset = (k: number) => timeOf(k) + soundLead;
  const others = withoutOwnAttacks(
    source,
    Array.from({ length: last - first + 3 }, (_, i) => onset(first - 1 + i)),
    attacks,
  );
  const occurrence = (k: number): Occurrence => ({
    start: timeOf(k),
    clear: clearSeconds(onset(k), others, duration),
  });
  const learn = (places: readonly number[]) => learnClickSound(source, places.map(occurrence), length);
  const alone = (places: readonly number[]) =>
    places.some((k) => occurrence(k).clear * source.sampleRate >= length);
  const sound = learn(heard.map(({ k }) => k));

  let start: { readonly k: number; readonly samples: Float32Array } | undefined;
  const startOf = (k: number) => {
    if (start?.k !== k) start = { k, samples: readAt(source, timeOf(k), startLength) };
    return start.samples;
  };
  const isThere = (k: number, model: Float32Array, limit: number) =>
    timeOf(k) > 0 && timeOf(k) < duration - 0.02 && leftOver(startOf(k), model, source.sampleRate) < limit;
  const bell = findBell({ timeOf, heard, common: sound, attacks, learn, isThere });
  if (heard.length < enough.clicks && bell === null) return null;
  const voiceOf = (k: number) => (bell?.has(k) ? bell.sound : sound);
  let from = Math.min(first, bell?.first ?? first);
  let to = last;
  // A click at either end may be half under a stroke, or in what rings of one: it belongs if most of it is there.
  const isOverRinging = (k: number) =>
    timeOf(k) > 0 &&
    timeOf(k) < duration - 0.02 &&
    leftOver(steps(startOf(k)), steps(voiceOf(k)), source.sampleRate) < halfCovered;
  const next = (k: number, step: 1 | -1) =>
    Array.from({ length: coveredReach }, (_, n) => k + (n + 1) * step).find(
      (place) => isThere(place, voiceOf(place), halfCovered) || isOverRinging(place),
    );
  for (let k = next(from, -1); k !== undefined; k = next(from, -1)) from = k;
  for (let k = next(to, 1); k !== undefined; k = next(to, 1)) to = k;
  const all = Array.from({ length: to - from + 1 }, (_, i) => from + i);
  const onsets = (wanted: (k: number) => boolean) => all.filter(wanted).map(onset);
  const voices = [
    {
      sound,
      times: onsets((k) => voiceOf(k) === sound),
      learnedFrom: heard.length,
      heardAlone: alone(heard.map(({ k }) => k)),
    },
  ];
  if (bell !== null)
    voices.push({
      sound: bell.sound,
      times: onsets((k) => voiceOf(k) === bell.sound),
      learnedFrom: bell.votes.length,
      heardAlone: alone(bell.votes),
    });
  return {
    period: grid.period,
    times: onsets(() => true),
    voices,
  };
}

/** From sample to sample, where what is low, as drums ring, hardly counts. */
function steps(samples: Float32Array): Float32Array {
  return samples.map((x, i) => x - (samples[i - 1] ?? x));
}
