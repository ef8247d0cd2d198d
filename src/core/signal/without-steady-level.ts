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

/**
 * The same one-channel recording without its steady level (direct-current offset): the median of means over stretches
 * spread through it. Silence outside the recording stays silence.
 */
export function withoutSteadyLevel(source: Source): Source {
  const means: number[] = [];
  for (let probe = 0; probe < probes; probe++) {
    const from = Math.max(0, Math.floor(((source.length - probeFrames) * probe) / (probes - 1)));
    const samples = source.read(0, from, Math.min(from + probeFrames, source.length));
    if (samples.length > 0) means.push(samples.reduce((sum, x) => sum + x, 0) / samples.length);
  }
  if (means.length === 0) return source;
  const offset = median(means);
  const scatter = median(means.map((mean) => Math.abs(mean - offset)));
  if (Math.abs(offset) <= leastScatters * scatter) return source;
  return {
    ...source,
    read(channel, from, to) {
      const samples = source.read(channel, from, to);
      const first = Math.max(0, -from);
      const last = Math.min(samples.length, source.length - from);
      for (let i = first; i < last; i++) samples[i]! -= offset;
      return samples;
    },
  };
}
