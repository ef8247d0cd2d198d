import { firstAtLeast } from '../stats/first-at-least.ts';
import type { Source } from './source.ts';

/** A pulse's place and height. */
interface Pulse {
  /** s */
  readonly time: number;
  /** Peak, full scale 1. */
  readonly peak: number;
}

/** What a note sounds like: our judgement, high and short enough to be told from the next. */
const sampleRate = 8000;
const decaySeconds = 0.02;
const pitchHz = 900;
const lengthSeconds = 0.12;

/**
 * A sound for notes that have none: a short, dying tone at each, so that they can be drawn and listened to. Pulses in
 * order of time; nothing may be found or measured in it.
 */
export function notePulses(pulses: readonly Pulse[], seconds: number): Source {
  const length = Math.ceil(seconds * sampleRate);
  const reach = Math.ceil(lengthSeconds * sampleRate);
  const at = pulses.map(({ time }) => Math.round(time * sampleRate));
  return {
    sampleRate,
    channels: 1,
    length,
    read(_channel, from, to) {
      const block = new Float32Array(to - from);
      for (let i = firstAtLeast(at, from - reach); i < at.length && at[i]! < to; i++) {
        const start = at[i]!;
        const last = Math.min(to, start + reach, length);
        for (let frame = Math.max(from, start, 0); frame < last; frame++) {
          const t = (frame - start) / sampleRate;
          const tone = Math.cos(2 * Math.PI * pitchHz * t) * Math.exp(-t / decaySeconds);
          block[frame - from]! += pulses[i]!.peak * tone;
        }
      }
      return block;
    },
  };
}
