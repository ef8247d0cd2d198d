import type { Source } from './source.ts';

/** Frames looked at to judge the channels, spread over the recording. */
const probes = 24;
const probeFrames = 4096;
/** A channel this much quieter than the loudest (power) carries nothing of its own: a dead or distant one. */
const deadShare = 0.003;
/** Below this correlation adding the channels would cancel more than it helps. */
const leastCorrelation = 0.2;

/**
 * One channel that serves all analysis: the mean of the channels where they agree, the loudest alone where one is
 * dead or they stand against each other (reversed polarity, widely spaced microphones). The answer doesn't depend on
 * the order of the channels.
 */
export function pickup(source: Source): Source {
  if (source.channels === 1) return source;
  const power = new Float64Array(source.channels);
  const sum = new Float64Array(probeFrames);
  let together = 0;
  for (let probe = 0; probe < probes; probe++) {
    const from = Math.floor(((source.length - probeFrames) * probe) / (probes - 1));
    sum.fill(0);
    for (let channel = 0; channel < source.channels; channel++) {
      const samples = source.read(channel, from, from + probeFrames);
      for (let i = 0; i < probeFrames; i++) {
        power[channel]! += samples[i]! * samples[i]!;
        sum[i]! += samples[i]!;
      }
    }
    for (let i = 0; i < probeFrames; i++) together += sum[i]! * sum[i]!;
  }
  const total = power.reduce((a, b) => a + b, 0);
  const loudest = power.indexOf(Math.max(...power));
  const alive = power.every((value) => value > deadShare * power[loudest]!);
  // |Σx|² = Σ|x|² (1 + (n − 1)·ρ) for channels of equal power and correlation ρ.
  const correlation = (together / Math.max(total, 1e-30) - 1) / (source.channels - 1);
  return alive && correlation > leastCorrelation ? meanOfChannels(source) : oneChannel(source, loudest);
}

function oneChannel(source: Source, channel: number): Source {
  return { ...source, channels: 1, read: (_, from, to, room) => source.read(channel, from, to, room) };
}

function meanOfChannels(source: Source): Source {
  let other = new Float32Array(0);
  return {
    ...source,
    channels: 1,
    read(_, from, to, room) {
      const mean = source.read(0, from, to, room);
      for (let channel = 1; channel < source.channels; channel++) {
        if (other.length < mean.length) other = new Float32Array(mean.length);
        const next = source.read(channel, from, to, other);
        for (let i = 0; i < mean.length; i++) mean[i]! += next[i]!;
      }
      for (let i = 0; i < mean.length; i++) mean[i]! /= source.channels;
      return mean;
    },
  };
}
