import { roomFor } from './room-for.ts';
import type { Source } from './source.ts';

/** A part of a recording, s from its start. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/**
 * The recording from one time to another as one of its own, to the nearest frame and kept inside it, with silence round it;
 * nothing is copied.
 *
 * @example cutSource(source, { from: 2, to: 4 }).length // 2 s of frames
 */
export function cutSource(source: Source, { from, to }: Stretch): Source {
  const first = Math.max(0, Math.round(from * source.sampleRate));
  const end = Math.min(source.length, Math.round(to * source.sampleRate));
  const length = Math.max(0, end - first);
  return {
    sampleRate: source.sampleRate,
    channels: source.channels,
    length,
    read: (channel, start, stop, room) => {
      const begin = Math.max(0, start);
      const last = Math.min(length, stop);
      if (begin === start && last === stop) return source.read(channel, first + begin, first + last, room);
      const out = roomFor(stop - start, room);
      if (begin < last) out.set(source.read(channel, first + begin, first + last), begin - start);
      return out;
    },
  };
}
