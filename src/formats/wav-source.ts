import type { Source } from '../core/signal/source.ts';
import type { Bytes } from './bytes.ts';
import { decodePcm } from './decode-pcm.ts';
import type { SampleLayout } from './sample-layout.ts';

/** Samples of all channels from one place of the file, until each has been given away. */
interface Span {
  readonly first: number;
  readonly last: number;
  readonly channels: (Float32Array | undefined)[];
}

/**
 * A recording read from a file of plain samples as it is asked for; memory doesn't grow with the file. Throws what `bytes` throws.
 *
 * @example
 * const bytes = memoryBytes(writeWav({ channels: [Float32Array.of(0, 0.5)], sampleRate: 48000, depth: 'int16' }));
 * const outcome = riffLayout(bytes);
 * if (outcome.ok) wavSource(bytes, outcome.layout).read(0, 0, 3); // 0, 0.5, 0
 */
export function wavSource(bytes: Bytes, layout: SampleLayout): Source {
  const { channels, frames, frameBytes, dataFrom, sampleRate } = layout;
  // Who wants one channel of a stretch mostly wants the others next.
  let kept: Span = { first: 0, last: 0, channels: [] };

  function decoded(channel: number, first: number, last: number): Float32Array {
    if (kept.first !== first || kept.last !== last || kept.channels[channel] === undefined) {
      const encoded = bytes.read(dataFrom + first * frameBytes, dataFrom + last * frameBytes);
      kept = { first, last, channels: decodePcm(encoded, layout) };
    }
    const samples = kept.channels[channel]!;
    // The caller may change what it gets.
    kept.channels[channel] = undefined;
    return samples;
  }

  return {
    sampleRate,
    channels,
    length: frames,
    read(channel, from, to) {
      if (!Number.isInteger(channel) || channel < 0 || channel >= channels) {
        throw new RangeError(`Channel ${channel} of a recording with ${channels}.`);
      }
      const first = Math.max(from, 0);
      const last = Math.min(to, frames);
      if (from === first && to === last && from < to) return decoded(channel, from, to);
      const samples = new Float32Array(Math.max(0, to - from));
      if (first < last) samples.set(decoded(channel, first, last), first - from);
      return samples;
    },
  };
}
