import { median } from '../stats/median.ts';
import type { Source } from './source.ts';

/** Stretches looked at to find the steady level, and their length in frames. */
const probes = 32;
const probeFrames = 2048;
/**
 * A level that isn't this many times the means' own scatter (median of distances) is chance: 4 standard errors of a
 * median of so many. Not a level in itself, so that neither gain nor polarity changes what is heard.
 */
const leastScatters = 1.4;
/** A level is a device's own, so the first seconds tell it, unless the whole recording says another one. */
const openingSeconds = 8;

/**
 * Steady level (direct-current offset) of a one-channel recording: the median of means over stretches spread through its
 * first seconds, where those spread through all of it don't say otherwise; 0 where it may be chance.
 *
 * @example steadyLevel(source) // 0.05 for a sine round 0.05
 */
export function steadyLevel(source: Source): number {
  const opening = Math.min(source.length, Math.round(openingSeconds * source.sampleRate));
  return [opening, source.length].reduce((level, length) => {
    const means = meansOver(source, length);
    const middle = median(means);
    const scatter = median(means.map((mean) => Math.abs(mean - middle)));
    return Math.abs(middle - level) <= leastScatters * scatter ? level : middle;
  }, 0);
}

function meansOver(source: Source, length: number): number[] {
  const means: number[] = [];
  for (let probe = 0; probe < probes; probe++) {
    const from = Math.max(0, Math.floor(((length - probeFrames) * probe) / (probes - 1)));
    const samples = source.read(0, from, Math.min(from + probeFrames, length));
    let sum = 0;
    for (let i = 0; i < samples.length; i++) sum += samples[i]!;
    if (samples.length > 0) means.push(sum / samples.length);
  }
  return means.length > 0 ? means : [0];
}

/** The same one-channel recording with a level taken off. Silence outside the recording stays silence. */
export function withoutLevel(source: Source, level: number): Source {
  if (level === 0) return source;
  return {
    ...source,
    read(channel, from, to, room) {
      const samples = source.read(channel, from, to, room);
      const first = Math.max(0, -from);
      const last = Math.min(samples.length, source.length - from);
      for (let i = first; i < last; i++) samples[i]! -= level;
      return samples;
    },
  };
}
