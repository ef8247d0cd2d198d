import { peakOf } from './peak-of.ts';
import type { Source } from './source.ts';

/** Frames of which one peak is kept. */
const peakFrames = 64;

/** The largest magnitudes of a channel, one for each `peakFrames` of its whole ones. */
export type PeakCourse = readonly number[];

/** Follows the peaks of the first channel while a recording comes. */
export function followPeaks(): (recording: Source) => PeakCourse {
  const peaks: number[] = [];
  return (recording) => {
    const from = peaks.length * peakFrames;
    const whole = Math.floor(recording.length / peakFrames) * peakFrames;
    const samples = recording.read(0, from, whole);
    for (let at = 0; at < samples.length; at += peakFrames) peaks.push(peakOf(samples, at, at + peakFrames));
    return peaks;
  };
}

/**
 * The envelope of a recording of one channel whose peaks are known: the same as `envelope`, though hardly any sample is
 * read again.
 *
 * @example envelopeOfPeaks(source, 900, followPeaks()(source)) // 900 numbers, 0 … 1
 */
export function envelopeOfPeaks(recording: Source, slices: number, peaks: PeakCourse): number[] {
  const { length } = recording;
  const read = (from: number, to: number) => {
    const samples = recording.read(0, from, Math.max(from, to));
    return peakOf(samples, 0, samples.length);
  };
  return Array.from({ length: slices }, (_, slice) => {
    const from = Math.ceil((slice * length) / slices);
    const to = Math.ceil(((slice + 1) * length) / slices);
    const first = Math.ceil(from / peakFrames);
    const last = Math.min(peaks.length, Math.floor(to / peakFrames));
    if (first >= last) return read(from, to);
    let peak = Math.max(read(from, first * peakFrames), read(last * peakFrames, to));
    for (let i = first; i < last; i++) if (peaks[i]! > peak) peak = peaks[i]!;
    return peak;
  });
}
