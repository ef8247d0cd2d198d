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
  for (let channel = 0; channel < source.channels; channel++) {
    for (let from = 0; from < source.length; from += block) {
      const to = Math.min(from + block, source.length);
      const samples = source.read(channel, from, to);
      let slice = Math.floor((from * slices) / source.length);
      let end = Math.ceil(((slice + 1) * source.length) / slices);
      let peak = peaks[slice]!;
      for (let i = 0; i < samples.length; i++) {
        while (from + i >= end) {
          peaks[slice] = peak;
          slice++;
          end = Math.ceil(((slice + 1) * source.length) / slices);
          peak = peaks[slice]!;
        }
        const x = Math.abs(samples[i]!);
        if (x > peak) peak = x;
      }
      peaks[slice] = peak;
    }
  }
  return peaks;
}
