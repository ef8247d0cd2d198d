import type { Source } from './source.ts';

/** Of every so many frames the first so many are looked at for the loudest sample. */
const probeEvery = 4096;
const probeFrames = 1024;
/** What peaks about here (−10 dBFS) is heard as it is. */
const usualPeak = 0.316;
/** Below this (−120 dBFS) there is nothing to raise. */
const silentPeak = 1e-6;

/** Follows how loud a one-channel recording is while it comes: half the distance of its extremes, whatever its steady level. */
export function peakFollower(): (source: Source) => number {
  let next = 0;
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  return (source) => {
    while (next < source.length) {
      const to = Math.min(next + probeFrames, source.length);
      const samples = source.read(0, next, to);
      for (let i = 0; i < samples.length; i++) {
        const sample = samples[i]!;
        if (sample < least) least = sample;
        if (sample > most) most = sample;
      }
      // A stretch that hasn't all come yet is looked at again.
      if (to < next + probeFrames) break;
      next += probeEvery;
    }
    return most < least ? 0 : (most - least) / 2;
  };
}

/**
 * Factor that brings a recording of this peak to its usual loudness, about −10 dBFS: how far the microphone was turned up
 * then changes nothing of what is heard. A power of two, so that it changes no sample's digits, and seldom while a
 * recording comes. Silence stays silence.
 *
 * @example usualGain(0.00316) // 128
 */
export function usualGain(peak: number): number {
  return peak < silentPeak ? 1 : 2 ** Math.round(Math.log2(usualPeak / peak));
}

/** The same one-channel recording, every sample `gain` times as large. */
export function atGain(source: Source, gain: number): Source {
  if (gain === 1) return source;
  return {
    ...source,
    read(channel, from, to, room) {
      const samples = source.read(channel, from, to, room);
      for (let i = 0; i < samples.length; i++) samples[i]! *= gain;
      return samples;
    },
  };
}
