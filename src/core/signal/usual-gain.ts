import type { Source } from './source.ts';

/** Stretches looked at for the loudest sample, and their length in frames. */
const probes = 64;
const probeFrames = 2048;
/** What peaks at this (−10 dBFS) is heard as it is. */
const usualPeak = 0.316;
/** Below this (−120 dBFS) there is nothing to raise. */
const silentPeak = 1e-6;

/** A recording at its usual gain. */
export interface UsualGain {
  readonly source: Source;
  /** What was added to its levels, dB. */
  readonly gainDb: number;
}

/**
 * The same one-channel recording raised or lowered so that the loudest of some stretches spread through it peaks at
 * −10 dBFS: how far the microphone was turned up then changes nothing of what is heard. Silence stays silence.
 *
 * @example atUsualGain(quiet).gainDb // 40 for a recording 40 dB under the usual
 */
export function atUsualGain(source: Source): UsualGain {
  let peak = 0;
  for (let probe = 0; probe < probes; probe++) {
    const from = Math.max(0, Math.floor(((source.length - probeFrames) * probe) / (probes - 1)));
    const samples = source.read(0, from, Math.min(from + probeFrames, source.length));
    for (let i = 0; i < samples.length; i++) peak = Math.max(peak, Math.abs(samples[i]!));
  }
  if (peak < silentPeak) return { source, gainDb: 0 };
  const gain = usualPeak / peak;
  return {
    gainDb: 20 * Math.log10(gain),
    source: {
      ...source,
      read(channel, from, to) {
        const samples = source.read(channel, from, to);
        for (let i = 0; i < samples.length; i++) samples[i]! *= gain;
        return samples;
      },
    },
  };
}
