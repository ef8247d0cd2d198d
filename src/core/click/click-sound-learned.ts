import { energyOf } from '../signal/energy-of.ts';
import { readAt } from '../signal/fractional-read.ts';
import type { Source } from '../signal/source.ts';

/** Block in which the quietest clicks are averaged, s. Measured: half or twice as much loses 1 to 3 of 669 strokes. */
const blockSeconds = 0.004;
/** Clicks looked at, at the most. Measured: 20 to 80 give the same. */
const mostClicks = 40;
/**
 * A block this many times further from the common sound than the second best one holds a stroke. Measured: 2 to 6 give
 * alike.
 */
const strokeFree = 3;
/**
 * A click whose start (s) has more than this many times the quietest one's energy is struck together with a stroke.
 * Measured on 12 takes with clicks: twice of either gives alike; an energy share under one leaves ten sounds that
 * aren't strokes.
 */
const likeEnergy = 1.4;
const startSeconds = 0.025;
/**
 * So many blocks in a row that have next to nothing in common end the sound. Measured, as passes: half to twice gives
 * the same.
 */
const quietBlocks = 5;
const leastWeight = 0.25;
const passes = 3;

/** Where a click's sound may be learned from: its start (s), and how much of it no stroke covers (s). */
export interface Occurrence {
  readonly start: number;
  readonly clear: number;
}

/**
 * The sound of a click, room and all, `length` samples of it. Every short block is the mean of the occurrences that
 * are clear there; where none is, of those nearest to what the quietest have in common, and what these don't share is
 * taken down (the share of the mean's power that chance alone would leave, a Wiener weight), so that no stroke gets
 * into the sound.
 */
export function learnClickSound(
  source: Source,
  occurrences: readonly Occurrence[],
  length: number,
): Float32Array {
  const sorted = occurrences.toSorted((a, b) => b.clear - a.clear).slice(0, mostClicks);
  // One set of clicks for all blocks where that can be had: a change of set is a step, and a step is an attack.
  const whole = struckAlone(
    source,
    sorted.filter(({ clear }) => clear * source.sampleRate >= length),
  );
  const clearest = whole.length > 0 ? whole : sorted;
  const heard = clearest.map(({ start }) => readAt(source, start, length));
  const block = Math.max(8, Math.round(blockSeconds * source.sampleRate));
  const sound = new Float32Array(length);
  const weights: number[] = [];
  const alone: boolean[] = [];
  const energies: number[] = [];
  for (let from = 0; from < length; from += block) {
    const to = Math.min(from + block, length);
    const free = heard.filter((_, i) => clearest[i]!.clear * source.sampleRate >= to);
    const used = blockMean(free.length > 0 ? free : heard, sound, from, to);
    const each = used.reduce((sum, samples) => sum + energyOf(samples, from, to), 0) / used.length;
    const common = energyOf(sound, from, to) / (each + 1e-20);
    const chance = 1 / used.length;
    const shared = Math.max(0, (common - chance) / (1 - chance + 1e-9) / Math.max(common, 1e-9));
    alone.push(free.length > 0 && used.length === 1);
    weights.push(used.length === 1 ? 0 : shared);
    energies.push(energyOf(sound, from, to) / (to - from));
  }
  // One click heard alone has nothing to compare it with but the quiet it ends in.
  const quiet = Math.min(...energies);
  for (let i = 0; i < weights.length; i++) {
    if (alone[i]) weights[i] = Math.max(0, 1 - (2 * quiet) / (energies[i]! + 1e-20));
  }
  // Once only noise is left the sound is over; a single lucky block later is no part of it.
  const end = weights.findIndex((_, i) =>
    weights.slice(i, i + quietBlocks).every((weight) => weight < leastWeight),
  );
  if (end > 0) weights.fill(0, end);
  const fading = Math.min(8 * block, length >> 3);
  // The weight runs from block to block in straight lines: a step would be an attack.
  for (let n = 0; n < length; n++) {
    const place = n / block - 0.5;
    const left = Math.max(0, Math.min(weights.length - 1, Math.floor(place)));
    const right = Math.min(weights.length - 1, left + 1);
    const share = Math.min(1, Math.max(0, place - left));
    const head = n < block ? 1 : weights[left]! * (1 - share) + weights[right]! * share;
    const fade = Math.min(1, (length - n) / fading);
    sound[n]! *= head * fade;
  }
  return sound;
}

/** Writes the mean of the stroke-free candidates of one block into `sound`; which ones they were. */
function blockMean(
  candidates: readonly Float32Array[],
  sound: Float32Array,
  from: number,
  to: number,
): readonly Float32Array[] {
  const nearest = (distance: (samples: Float32Array) => number) =>
    candidates
      .map((samples) => ({ samples, distance: distance(samples) }))
      .sort((a, b) => a.distance - b.distance);
  const quietest = nearest((samples) => energyOf(samples, from, to));
  const sums = new Float64Array(to - from);
  let used = quietest.slice(0, Math.max(2, candidates.length >> 2)).map(({ samples }) => samples);
  for (let pass = 0; ; pass++) {
    sums.fill(0);
    for (const samples of used) for (let n = from; n < to; n++) sums[n - from]! += samples[n]!;
    for (let n = from; n < to; n++) sound[n] = sums[n - from]! / used.length;
    if (candidates.length < 3 || pass === passes) return used;
    const ranked = nearest((samples) => {
      let sum = 0;
      for (let n = from; n < to; n++) {
        const off = samples[n]! - sound[n]!;
        sum += off * off;
      }
      return sum;
    });
    const limit = strokeFree * ranked[1]!.distance;
    used = ranked.filter(({ distance }, rank) => rank < 2 || distance <= limit).map(({ samples }) => samples);
  }
}

/** Leaves out clicks whose start is louder than the quietest one's: a stroke fell on them. */
function struckAlone(source: Source, occurrences: readonly Occurrence[]): Occurrence[] {
  const count = Math.round(startSeconds * source.sampleRate);
  const energies = occurrences.map(({ start }) => energyOf(readAt(source, start, count), 0, count));
  const limit = likeEnergy * Math.min(...energies);
  return occurrences.filter((_, i) => energies[i]! <= limit);
}
