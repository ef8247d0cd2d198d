import { readAt } from '../signal/fractional-read.ts';
import type { Source } from '../signal/source.ts';
import { clickAlone } from './click-alone.ts';

/** Clicks looked at, at the most. */
const mostClicks = 64;
/** Power is smoothed over so much to either side, s: a stroke's attack passes no quicker. */
const smoothSeconds = 0.0015;
/** Share of the clicks that may be taken to lie clear at any moment; the weight of none is larger than theirs. */
const clearShare = 0.25;
const passes = 6;
/** What every sample of a recording may be off, power. */
const leastPower = 1e-14;

/**
 * The sound that clicks with these starts (s) have in common, `length` samples: at each moment their mean, weighted by how
 * little else is heard there. That is the likeliest one where what else sounds, strokes and their room, is another sound
 * of unknown power each time. Needs four clicks or so; what chance may have left is taken down.
 *
 * @example commonSound(source, [1, 1.5, 1.9, 2.2], 4800)
 */
export function commonSound(source: Source, starts: readonly number[], length: number): Float32Array {
  const step = Math.max(1, starts.length / mostClicks);
  const count = Math.min(starts.length, mostClicks);
  const heard = Array.from({ length: count }, (_, i) =>
    readAt(source, starts[Math.floor(i * step)]!, length),
  );
  const reach = Math.max(1, Math.round(smoothSeconds * source.sampleRate));
  const sound = new Float32Array(length);
  const doubt = new Float64Array(length);
  const weights = heard.map(() => new Float64Array(Math.ceil(length / reach)));
  for (let pass = 0; pass < passes; pass++) {
    weights.forEach((weight, i) => {
      weight.set(powerOf(heard[i]!, sound, reach, weight.length));
    });
    toWeights(weights);
    for (let n = 0; n < length; n++) {
      const place = n / reach - 0.5;
      const left = Math.max(0, Math.floor(place));
      const right = Math.min(weights[0]!.length - 1, left + 1);
      const share = Math.min(1, Math.max(0, place - left));
      let sum = 0;
      let all = 0;
      for (let i = 0; i < count; i++) {
        const weight = weights[i]![left]! * (1 - share) + weights[i]![right]! * share;
        all += weight;
        sum += weight * heard[i]![n]!;
      }
      sound[n] = sum / all;
      doubt[n] = 1 / all;
    }
  }
  return clickAlone(sound, doubt, source.sampleRate);
}

/** Power of what `samples` are without `sound`, block by block of `reach` samples, each with those beside it. */
function powerOf(samples: Float32Array, sound: Float32Array, reach: number, blocks: number): Float64Array {
  const own = Float64Array.from({ length: blocks }, (_, block) => {
    const to = Math.min(samples.length, (block + 1) * reach);
    let sum = 0;
    for (let n = block * reach; n < to; n++) sum += (samples[n]! - sound[n]!) ** 2;
    return sum / (to - block * reach);
  });
  return own.map((power, block) => {
    return (own[Math.max(0, block - 1)]! + 2 * power + own[Math.min(blocks - 1, block + 1)]!) / 4;
  });
}

/** Turns powers, one row a click, into weights. */
function toWeights(powers: readonly Float64Array[]): void {
  const column = new Float64Array(powers.length);
  for (let block = 0; block < powers[0]!.length; block++) {
    powers.forEach((power, i) => {
      column[i] = power[block]!;
    });
    const clear = column.sort()[Math.floor(clearShare * column.length)]! + leastPower;
    for (const power of powers) power[block] = 1 / Math.max(clear, power[block]!);
  }
}
