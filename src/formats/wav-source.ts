import { roomFor } from '../core/signal/room-for.ts';
import type { Source } from '../core/signal/source.ts';
import type { Bytes } from './bytes.ts';
import { decodeChannel } from './decode-pcm.ts';
import type { SampleLayout } from './sample-layout.ts';

/**
 * A recording read from a file of plain samples as it is asked for; memory doesn't grow with the file. Throws what
 * `bytes` throws.
 *
 * @example
 * const bytes = memoryBytes(writeWav({ channels: [Float32Array.of(0, 0.5)], sampleRate: 48000, depth: 'int16' }));
 * const outcome = riffLayout(bytes);
 * if (outcome.ok) wavSource(bytes, outcome.layout).read(0, 0, 3); // 0, 0.5, 0
 */
export function wavSource(bytes: Bytes, layout: SampleLayout): Source {
  const { channels, frames, frameBytes, dataFrom, sampleRate } = layout;
  // Who wants one channel of a stretch mostly wants the others next.
  let kept = { first: 0, last: 0, encoded: new Uint8Array(0) as Uint8Array };
  let byteRoom = new Uint8Array(0);

  function decoded(channel: number, first: number, last: number, room?: Float32Array): Float32Array {
    if (kept.first !== first || kept.last !== last) {
      const size = (last - first) * frameBytes;
      if (room !== undefined && byteRoom.length < size) byteRoom = new Uint8Array(size);
      const [from, to] = [dataFrom + first * frameBytes, dataFrom + last * frameBytes];
      kept = { first, last, encoded: bytes.read(from, to, byteRoom) };
    }
    return decodeChannel(kept.encoded, layout, channel, room);
  }

  return {
    sampleRate,
    channels,
    length: frames,
    read(channel, from, to, room) {
      if (!Number.isInteger(channel) || channel < 0 || channel >= channels) {
        throw new RangeError(`Channel ${channel} of a recording with ${channels}.`);
      }
      const first = Math.max(from, 0);
      const last = Math.min(to, frames);
      if (from === first && to === last && from < to) return decoded(channel, from, to, room);
      const samples = roomFor(Math.max(0, to - from), room);
      if (first < last) samples.set(decoded(channel, first, last), first - from);
      return samples;
    },
  };
}
