import { median } from '../stats/median.ts';
import type { Finding, HeardRecording } from './heard-recording.ts';
import { quietFrames } from './quiet-frames.ts';

/** The world's mains, Hz (IEC 60038 knows these two). */
const mains = [50, 60] as const;
/** Overtones that are looked at: what reaches further goes with them. */
const overtones = [1, 2, 3, 4, 5, 6] as const;
/** Beside each line the sound is no mains', Hz. */
const beside = [-11, -7, 7, 11] as const;
const windowSeconds = 1;
const mostWindows = 16;
/** A line stands out by so much, dB, and hum is worth a word from this level on, dBFS of the root mean square. */
const standsOutDb = 10;
const leastDb = -58;
/** At least this share of a window must be quiet. */
const leastQuiet = 0.15;

/**
 * Mains hum: lines at 50 or 60 Hz and their multiples that stand out of what lies beside them in the quiet between
 * sounds. Says its level. What its overtones do to taps is found by `tapToNoise`, which counts them as noise.
 */
export function hum(heard: HeardRecording): Finding | null {
  const { sound } = heard;
  const quiet = quietFrames(heard);
  const length = Math.round(windowSeconds * sound.frameRate);
  const windows = Math.floor(sound.mean.length / length);
  if (windows === 0) return null;
  const used = Array.from({ length: Math.min(mostWindows, windows) }, (_, i) =>
    Math.floor((i * windows) / Math.min(mostWindows, windows)),
  );
  const found = mains.map((hz) => {
    let power = 0;
    for (const n of overtones) {
      const line: number[] = [];
      const other: number[] = [];
      for (const window of used) {
        const from = window * length;
        const at = linePower(sound.mean, quiet, from, length, (n * hz) / sound.frameRate);
        if (at === null) continue;
        line.push(at);
        const around = beside.map((away) =>
          linePower(sound.mean, quiet, from, length, (n * hz + away) / sound.frameRate),
        );
        other.push(median(around.map((value) => value ?? 0)));
      }
      if (line.length === 0) continue;
      const here = median(line);
      if (10 * Math.log10(here / (median(other) + 1e-15)) > standsOutDb) power += here;
    }
    return { hz, levelDb: 10 * Math.log10(power + 1e-15) };
  });
  const [one, other] = found;
  const loudest = one!.levelDb >= other!.levelDb ? one! : other!;
  if (loudest.levelDb < leastDb) return null;
  return { code: 'hum', facts: { hz: loudest.hz, levelDb: loudest.levelDb }, spoils: [] };
}

/** Mean square of the part of `values` at a frequency (cycles a frame) over the quiet frames; null where few are. */
function linePower(
  values: Float32Array,
  quiet: Uint8Array,
  from: number,
  length: number,
  frequency: number,
): number | null {
  let count = 0;
  let sum = 0;
  for (let i = from; i < from + length; i++) {
    if (quiet[i] === 1) {
      count++;
      sum += values[i]!;
    }
  }
  if (count < leastQuiet * length) return null;
  const mean = sum / count;
  const angle = 2 * Math.PI * frequency;
  const [turnRe, turnIm] = [Math.cos(angle), Math.sin(angle)];
  let [re, im] = [1, 0];
  let [sumRe, sumIm] = [0, 0];
  for (let i = from; i < from + length; i++) {
    if (quiet[i] === 1) {
      const x = values[i]! - mean;
      sumRe += x * re;
      sumIm += x * im;
    }
    const next = re * turnRe - im * turnIm;
    im = re * turnIm + im * turnRe;
    re = next;
  }
  return (2 * (sumRe * sumRe + sumIm * sumIm)) / (count * count);
}
