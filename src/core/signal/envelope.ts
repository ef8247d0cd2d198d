import { peakOf } from './peak-of.ts';
import type { Source } from './source.ts';

/**
 * Peak magnitude of `slices` equal parts of a recording, all channels together, for drawing it; 0 for a part that no
 * sample falls into.
 *
 * @example envelope(source, 900) // 900 numbers, 0 … 1
 */
export function envelope(source: Source, slices: number): number[] {
  const peaks = new Array<number>(slices).fill(0);
  const block = 65_536;
  const room = new Float32Array(block);
  for (let channel = 0; channel < source.channels; channel++) {
    for (let from = 0; from < source.length; from += block) {
      const to = Math.min(from + block, source.length);
      const samples = source.read(channel, from, to, room);
      let slice = Math.floor((from * slices) / source.length);
      for (let done = from; done < to; slice++) {
        const end = Math.min(to, Math.ceil(((slice + 1) * source.length) / slices));
        peaks[slice] = Math.max(peaks[slice]!, peakOf(samples, done - from, end - from));
        done = Math.max(done, end);
      }
    }
  }
  return peaks;
}
