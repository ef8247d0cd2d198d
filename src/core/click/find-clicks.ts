import { readAt } from '../signal/fractional-read.ts';
import type { Source } from '../signal/source.ts';
import { findBell } from './bell.ts';
import { clearSeconds, wobble } from './clear-seconds.ts';
import { type ClickGrid, fitGrid } from './click-grid.ts';
import { type ClickMatch, leftOver, matchClick, matchSeconds } from './click-match.ts';
import { type Attack, type ClickSeed, clickSeeds, periods, soundLead } from './click-seed.ts';
import { learnClickSound, type Occurrence } from './click-sound-learned.ts';

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
  readonly grid: ClickGrid;
  /** All onsets in order of time, s. */
  readonly times: readonly number[];
  /** The common sound, then the bell's if there is one. */
  readonly voices: readonly ClickVoice[];
}

/** How well a click must lie to count as surely heard, and the gain it may have. */
const strict = { correlation: 0.93, gain: [0.8, 1.25] as const };
/** Surely heard clicks that make a metronome, and the share of the places between the first and the last. */
const enough = { clicks: 4, alone: 3, share: 0.12 };
/** Longest sound learned, s, and as a share of the period. */
const longestSound = { seconds: 0.6, share: 0.92 };
/**
 * Strokes taken for clicks lie anywhere within the wobble of an even grid, clicks on it to a hundredth of a millisecond
 * (measured on rendered takes and on takes of recorded strokes): how unlikely it must be that chance lies so close.
 */
const chanceOfStrokes = 1e-3;
const readingSeconds = 0.00001;
const mostSeeds = 40;
const longestGap = 12;
/** Share of a click's power that may be left over where it is taken for heard, or for half covered by a stroke. */
const halfCovered = 0.25;
/** Strokes may cover this many clicks in a row at either end. */
const coveredReach = 16;

/**
 * Into how many parts a found period may have to be divided, and how many clicks must be seen between those found:
 * at least so many, and this share of the places, for strokes cover the others.
 */
const between = { parts: [4, 3, 2] as const, fewest: 3, share: 0.2 };

export interface HeardAt extends ClickMatch {
  readonly k: number;
}

const isStrict = ({ correlation, gain }: ClickMatch) =>
  correlation > strict.correlation && gain > strict.gain[0] && gain < strict.gain[1];

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
    if (heard.length >= enough.alone && weight > (best?.weight ?? 0) && isEven(heard))
      best = { heard, weight };
    if ((best?.heard.length ?? 0) >= 12) break;
  }
  if (best === null) return null;
  // A seed may have something of a stroke in it: what the clicks found have in common finds the others.
  const more = followAgain(source, best.heard, duration, attacks);
  const sure = more.length > best.heard.length && isEven(more) ? more : best.heard;
  return settle(source, everyClick(source, sure, duration, attacks), duration, attacks);
}

/** Clicks of which only every second, third or fourth was found, with those between them. */
function everyClick(
  source: Source,
  heard: HeardAt[],
  duration: number,
  attacks: readonly Attack[],
): HeardAt[] {
  const grid = fitGrid(heard.map(({ k, time }) => ({ k, time, weight: 1 })));
  const count = Math.round(matchSeconds * source.sampleRate);
  const sound = commonSound(source, heard, duration, attacks);
  const ks = heard.map(({ k }) => k);
  const span = Math.max(...ks) - Math.min(...ks);
  for (const parts of between.parts) {
    const period = grid.period / parts;
    if (period < periods.shortest) continue;
    // Only places that no larger share of the period has: a click at every half doesn't make one at every quarter.
    const places = Array.from({ length: span * parts }, (_, i) => i).filter(
      (i) => i % parts !== 0 && (parts % 2 !== 0 || i % 2 !== 0),
    );
    const there = places.filter((i) => {
      const time = grid.origin + Math.min(...ks) * grid.period + i * period;
      return leftOver(readAt(source, time, count), sound, source.sampleRate) < halfCovered;
    });
    if (there.length < Math.max(between.fewest, between.share * places.length)) continue;
    const all = follow(source, { time: grid.origin + soundLead, period, sound }, duration);
    if (all.length > heard.length && isEven(all)) return all;
  }
  return heard;
}

function followAgain(
  source: Source,
  heard: readonly HeardAt[],
  duration: number,
  attacks: readonly Attack[],
): HeardAt[] {
  const grid = fitGrid(heard.map(({ k, time }) => ({ k, time, weight: 1 })));
  const sound = commonSound(source, heard, duration, attacks);
  return follow(source, { time: grid.origin + soundLead, period: grid.period, sound }, duration);
}

/** The first milliseconds that the clicks found have in common. */
function commonSound(
  source: Source,
  heard: readonly HeardAt[],
  duration: number,
  attacks: readonly Attack[],
): Float32Array {
  const places = heard.map(({ time }) => ({
    start: time,
    clear: clearSeconds(time + soundLead, attacks, duration),
  }));
  return learnClickSound(source, places, Math.round(matchSeconds * source.sampleRate));
}

/** Follows a seed to both ends of the recording; the surely heard clicks with their numbers. */
function follow(source: Source, seed: ClickSeed, duration: number): HeardAt[] {
  const heard: HeardAt[] = [];
  for (const direction of [1, -1]) {
    let gap = 0;
    let grid: ClickGrid = { origin: seed.time - soundLead, period: seed.period };
    for (let k = direction > 0 ? 0 : -1; gap < longestGap; k += direction) {
      const due = grid.origin + k * grid.period;
      if (due < 0 || due > duration - 0.01) break;
      const match = matchClick(source, seed.sound, due, wobble + gap * 0.00005);
      if (!isStrict(match)) {
        gap++;
        continue;
      }
      gap = 0;
      heard.push({ ...match, k });
      if (heard.length >= 3)
        grid = fitGrid(heard.slice(-16).map((h) => ({ k: h.k, time: h.time, weight: 1 })));
    }
  }
  return heard.sort((a, b) => a.k - b.k);
}

/** Whether the clicks lie closer to their grid than strokes that happen to fall near one would. */
function isEven(heard: readonly HeardAt[]): boolean {
  const { origin, period } = fitGrid(heard.map(({ k, time }) => ({ k, time, weight: 1 })));
  const free = heard.length - 2;
  const squares = heard.reduce((sum, { k, time }) => sum + (time - origin - k * period) ** 2, 0);
  const scatter = Math.sqrt(squares / free);
  const ofChance = wobble / Math.sqrt(3);
  return scatter < readingSeconds || (scatter / ofChance) ** free < chanceOfStrokes;
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
  const occurrence = (k: number): Occurrence => {
    const start = timeOf(k);
    return { start, clear: clearSeconds(start + soundLead, attacks, duration) };
  };
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
  // A click at either end may be half under a stroke: it belongs if most of it is there.
  const next = (k: number, step: 1 | -1) =>
    Array.from({ length: coveredReach }, (_, n) => k + (n + 1) * step).find((place) =>
      isThere(place, voiceOf(place), halfCovered),
    );
  for (let k = next(from, -1); k !== undefined; k = next(from, -1)) from = k;
  for (let k = next(to, 1); k !== undefined; k = next(to, 1)) to = k;
  const all = Array.from({ length: to - from + 1 }, (_, i) => from + i);
  const onsets = (wanted: (k: number) => boolean) => all.filter(wanted).map((k) => timeOf(k) + soundLead);
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
    grid: { origin: timeOf(from) + soundLead, period: grid.period },
    times: onsets(() => true),
    voices,
  };
}
