import type { Source } from '../../src/core/signal/source.ts';

/** Channels in memory (full scale ±1, not quantised) as a recording; silence before and after. */
export function floatSource(sampleRate: number, ...channels: readonly Float32Array[]): Source {
  return {
    sampleRate,
    channels: channels.length,
    length: channels[0]!.length,
    read(channel, from, to) {
      const samples = channels[channel]!;
      const out = new Float32Array(to - from);
      const first = Math.max(0, from);
      if (first < to)
        out.set(samples.subarray(first, Math.max(first, Math.min(to, samples.length))), first - from);
      return out;
    },
  };
}

/** A recording worked out sample by sample, never in memory as a whole; silence before and after. */
export function formulaSource(sampleRate: number, length: number, value: (n: number) => number): Source {
  const read = (_: number, from: number, to: number) =>
    Float32Array.from({ length: to - from }, (_, i) => {
      const n = from + i;
      return n < 0 || n >= length ? 0 : value(n);
    });
  return { sampleRate, channels: 1, length, read };
}

/** The same recording, and the longest stretch that anyone has read of it. */
export function watchedSource(source: Source): { readonly source: Source; longestRead(): number } {
  let longest = 0;
  const read = (channel: number, from: number, to: number) => {
    longest = Math.max(longest, to - from);
    return source.read(channel, from, to);
  };
  return { source: { ...source, read }, longestRead: () => longest };
}
