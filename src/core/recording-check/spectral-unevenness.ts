import type { Source } from '../signal/source.ts';
import { windowSpectrum } from './window-spectrum.ts';

/**
 * Spectra are taken over so long, s, rounded to a power of two of samples: as fine as the bands of voice processing.
 */
const windowSeconds = 0.0213;
/** The upper end of the levels' band, and what lies above it, Hz; drums ring below. */
const bands = { levels: { fromHz: 2000, toHz: 3500 }, hiss: { fromHz: 3500, toHz: 14_000 } };
/** A bin is held against the median of so many on each side of it and itself. */
const beside = 3;
/** Stretches begin so long after a sound, s, and end so long before the next. */
const quiet = { after: 0.06, before: 0.012 };
/** So many windows are looked at, spread over the recording; fewer than the second tell nothing. */
const windows = { most: 160, fewest: 40 };
/** Below this there is no sound but the decoder's rounding, dB a bin: 30 dB under the flicker of 16 bits. */
const nothingDb = -85;

/** How uneven the spectrum of the quiet is, dB; NaN where there is too little quiet or sound. */
export interface Unevenness {
  readonly levels: number;
  readonly hiss: number;
}

/**
 * Root mean square difference of bins from their local median, dB, over the quiet of a recording. The power of a bin of
 * noise has an exponential distribution, whatever the noise's level and colour: 5.05 dB here. Only what turns single
 * bands of it up and down makes that more.
 */
export function spectralUnevenness(source: Source, sounds: readonly { readonly time: number }[]): Unevenness {
  const { sampleRate, length } = source;
  const { size, powerAt } = windowSpectrum(source, windowSeconds);
  const places = quietPlaces(sounds, length / sampleRate, size / sampleRate);
  if (places.length < windows.fewest) return { levels: Number.NaN, hiss: Number.NaN };
  const step = Math.max(1, places.length / windows.most);
  const binOf = (hz: number) => Math.round((Math.min(hz, 0.45 * sampleRate) * size) / sampleRate);
  const sums = Object.values(bands).map(({ fromHz, toHz }) => ({
    from: binOf(fromHz),
    to: binOf(toHz),
    squares: 0,
    count: 0,
  }));
  const levels = new Float64Array(size / 2);
  const near = new Float64Array(2 * beside + 1);
  for (let place = 0; place < places.length; place += step) {
    const power = powerAt(Math.round(places[Math.floor(place)]! * sampleRate));
    for (let bin = 0; bin < levels.length; bin++) levels[bin] = 10 * Math.log10(power[bin]! + 1e-30);
    for (const sum of sums) {
      for (let bin = sum.from; bin < sum.to; bin++) {
        const middle = middleOf(levels, bin, near);
        if (middle < nothingDb) continue;
        sum.squares += (levels[bin]! - middle) ** 2;
        sum.count++;
      }
    }
  }
  const [low, high] = sums.map(({ squares, count }) => Math.sqrt(squares / count));
  return { levels: low!, hiss: high! };
}

/** Median of a bin and those beside it; `near` is room to sort them in. */
function middleOf(levels: Float64Array, bin: number, near: Float64Array): number {
  for (let k = 0; k < near.length; k++) {
    const level = levels[bin - beside + k]!;
    let at = k;
    for (; at > 0 && near[at - 1]! > level; at--) near[at] = near[at - 1]!;
    near[at] = level;
  }
  return near[beside]!;
}

/** Where windows of quiet begin, s. */
function quietPlaces(
  sounds: readonly { readonly time: number }[],
  end: number,
  seconds: number,
): readonly number[] {
  const places: number[] = [];
  let from = 0;
  for (const { time } of [...sounds, { time: end }]) {
    const to = time - quiet.before - seconds;
    for (let at = from; at <= to; at += seconds / 2) places.push(at);
    from = time + quiet.after;
  }
  return places;
}
