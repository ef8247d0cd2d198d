import { roomFor } from '../core/signal/room-for.ts';
import type { Source } from '../core/signal/source.ts';

/** Samples kept at most, all channels together: 64 MB, six minutes of one channel at 44.1 kHz. */
export const mostKept = 16_000_000;

/**
 * The same recording with its samples decoded once and kept, as it is read several times over; one that is longer than
 * `mostKept` comes back as it is and is read from the file each time.
 *
 * @example keptSource(source).read(0, -1, 2) // 0, then the first two samples
 */
export function keptSource(source: Source): Source {
  const { channels, length, sampleRate } = source;
  if (length * channels > mostKept) return source;
  const kept = Array.from({ length: channels }, (_, channel) => source.read(channel, 0, length));
  return {
    sampleRate,
    channels,
    length,
    read(channel, from, to, room) {
      const samples = kept[channel];
      if (samples === undefined) throw new RangeError(`Channel ${channel} of a recording with ${channels}.`);
      if (room === undefined && from >= 0 && to <= length) return samples.slice(from, Math.max(from, to));
      const read = roomFor(Math.max(0, to - from), room);
      const first = Math.max(0, from);
      if (first < to) read.set(samples.subarray(first, to), first - from);
      return read;
    },
  };
}
