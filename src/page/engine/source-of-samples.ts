import type { Source } from '../../core/signal/source.ts';

/** Samples in memory as a recording, one array a channel; what lies outside of them is silence. */
export function sourceOfSamples(channels: readonly Float32Array[], sampleRate: number): Source {
  const length = channels[0]?.length ?? 0;
  return {
    sampleRate,
    channels: channels.length,
    length,
    read(channel, from, to) {
      const samples = channels[channel];
      if (samples === undefined)
        throw new RangeError(`Channel ${channel} of a recording with ${channels.length}.`);
      const read = new Float32Array(Math.max(0, to - from));
      const first = Math.max(0, from);
      if (first < Math.min(to, length)) read.set(samples.subarray(first, Math.min(to, length)), first - from);
      return read;
    },
  };
}
