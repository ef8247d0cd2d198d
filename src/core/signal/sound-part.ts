import type { Source } from './source.ts';

/**
 * A stretch of a recording as a recording of its own, read from it as it is needed; `from` and `to` in s, kept inside it.
 *
 * @example soundPart(source, 2, 4).length // 2 s of frames
 */
export function soundPart(source: Source, from: number, to: number): Source {
  const first = Math.max(0, Math.floor(from * source.sampleRate));
  const last = Math.min(source.length, Math.ceil(to * source.sampleRate));
  const length = Math.max(0, last - first);
  return {
    sampleRate: source.sampleRate,
    channels: source.channels,
    length,
    read: (channel, a, b) => {
      const block = source.read(channel, a + first, b + first);
      // Beyond the stretch there is silence, whatever the recording goes on with.
      if (a < 0) block.fill(0, 0, Math.min(block.length, -a));
      if (b > length) block.fill(0, Math.max(0, length - a));
      return block;
    },
  };
}
