import type { Source } from '../signal/source.ts';
import { median } from '../stats/median.ts';
import { windowSpectrum } from './window-spectrum.ts';

/** Hiss is heard up here, Hz: a codec with few bits codes little more of it than how loud each of its blocks is. */
const band = { fromHz: 12_000, toHz: 15_600 };
/**
 * Hiss below it, Hz, that the band may lie under by so much, dB: rooms and microphones come to 10, what was once recorded at
 * 22.05 kHz to 29 and more, where the band holds only what rounding and resampling left.
 */
const below = { fromHz: 6000, toHz: 9000, mostDb: 20 };
/** Windows as long as such blocks, s, rounded to a power of two of samples. */
const windowSeconds = 0.0213;
/** Stretches begin so long after a sound, s, and end so long before the next. */
const quiet = { after: 0.06, before: 0.012 };
/** So many windows are looked at, and so many bends needed. */
const windows = { most: 1200, fewest: 40 };
/** Below this there is no hiss but a decoder's rounding, dB a bin. */
const nothingDb = -85;
/** Bins of a sine-squared window that are worth one independent bin. */
const binsAlike = 1.9;
/** Standard deviation of the level of one bin of noise, about, dB: 10/ln 10. */
const oneBinDb = 10 / Math.LN10;
/** Half of all normal deviates are smaller than this, in standard deviations: Φ⁻¹(¾). */
const middleOfNormal = 0.6745;

/**
 * How much the highest hiss between sounds goes up and down from block to block, against what chance does to noise: 1
 * for noise of any level. Each window is held against those on both sides, so that dying away counts little. NaN where
 * there is too little quiet or no such hiss. Linear in length up to so many windows.
 *
 * @example hissSteps(source, hearing.sounds) // 1.1
 */
export function hissSteps(source: Source, sounds: readonly { readonly time: number }[]): number {
  const { sampleRate, length } = source;
  if (band.toHz > 0.48 * sampleRate) return Number.NaN;
  const { size, powerAt } = windowSpectrum(source, windowSeconds);
  const bin = (hz: number) => Math.round((hz * size) / sampleRate);
  const [first, last] = [bin(band.fromHz), bin(band.toHz)];
  const meanDb = (power: Float64Array, first: number, last: number) => {
    let sum = 0;
    for (let k = first; k < last; k++) sum += power[k]!;
    return 10 * Math.log10(sum / (last - first) + 1e-12);
  };
  const belowDb: number[] = [];
  const levelDb = (from: number) => {
    const power = powerAt(from);
    belowDb.push(meanDb(power, bin(below.fromHz), bin(below.toHz)));
    return meanDb(power, first, last);
  };
  const bends: number[] = [];
  const levels: number[] = [];
  let from = 0;
  for (const { time } of [...sounds, { time: length / sampleRate }]) {
    const count = Math.floor(((time - quiet.before - from) * sampleRate) / size);
    const some: number[] = [];
    for (let i = 0; i < count && levels.length + some.length < windows.most; i++)
      some.push(levelDb(Math.round(from * sampleRate) + i * size));
    for (let i = 2; i < some.length; i++) bends.push(Math.abs(some[i]! - 2 * some[i - 1]! + some[i - 2]!));
    levels.push(...some);
    from = time + quiet.after;
  }
  if (bends.length < windows.fewest || median(levels) < nothingDb) return Number.NaN;
  if (median(belowDb) - median(levels) > below.mostDb) return Number.NaN;
  const chanceDb = (middleOfNormal * Math.sqrt(6) * oneBinDb) / Math.sqrt((last - first) / binsAlike);
  return median(bends) / chanceDb;
}
