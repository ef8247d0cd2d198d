import type { CoarseSamples } from './coarse-samples.ts';
import type { Source } from './source.ts';

/**
 * A recording of coarse samples, each put somewhere within its step, since any place in it is as likely. As stored, what
 * is softer than a step is no sound at all, and where it comes back a step is heard as an attack. The same at each
 * reading. Recordings whose steps are hidden by noise, and fine ones, are left as they are.
 *
 * @example withStepNoise(source, { step: 1 / 128, still: true }).read(0, 0, 2) // where the source has 0, 0: -0.0003, 0.0037
 */
export function withStepNoise(source: Source, coarse: CoarseSamples | null): Source {
  if (coarse === null || !coarse.still) return source;
  const { step } = coarse;
  return {
    ...source,
    read(channel, from, to, room) {
      const samples = source.read(channel, from, to, room);
      const last = Math.min(to, source.length) - from;
      for (let i = Math.max(0, -from); i < last; i++) samples[i]! += step * placeWithin(from + i, channel);
      return samples;
    },
  };
}

/** A place from −½ to ½ for a sample, by mixing the bits of its number. */
function placeWithin(at: number, channel: number): number {
  let mixed = Math.imul(at ^ Math.imul(channel + 1, 0x9e3779b1), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return ((mixed ^ (mixed >>> 16)) & 0xffff) / 0x10000 - 0.5;
}
