import { crossProducts } from '../signal/cross-products.ts';
import { readAt } from '../signal/fractional-read.ts';
import type { Source } from '../signal/source.ts';

/** How well the start of a click's sound lies in a recording near an expected time. */
export interface ClickMatch {
  /** Time at which it lies best, s. */
  readonly time: number;
  /** Normalised correlation there, −1 … 1. */
  readonly correlation: number;
  /** Its size there against the sound itself. */
  readonly gain: number;
}

/**
 * How well a click must lie to count as surely heard, and the gain it may have. Measured on 12 takes with clicks: gains
 * twice as far apart find the same; half the correlation takes one more sound for a stroke.
 */
const strict = { correlation: 0.93, gain: { least: 0.8, most: 1.25 } };

/** Whether a click is surely heard. */
export const isSure = ({ correlation, gain }: ClickMatch): boolean =>
  correlation > strict.correlation && gain > strict.gain.least && gain < strict.gain.most;

/**
 * Only this much of a click is held against the recording, s: the stroke it goes with often follows at once.
 * Measured on 12 takes with clicks: half finds one more sound that is no stroke, twice loses 17 of 155 clicks.
 */
export const matchSeconds = 0.0075;

/**
 * Best place of `sound` (at the recording's rate, at least `matchSeconds` long) within `reach` seconds of `time`, to a
 * small part of a sample: the correlation at whole samples, then a parabola through the three best.
 */
export function matchClick(source: Source, sound: Float32Array, time: number, reach: number): ClickMatch {
  const rate = source.sampleRate;
  const count = Math.round(matchSeconds * rate);
  const steps = Math.max(1, Math.ceil(reach * rate));
  const start = time - steps / rate;
  const heard = readAt(source, start, count + 2 * steps);
  let energy = 0;
  for (let i = 0; i < count; i++) energy += sound[i]! * sound[i]!;
  const products = crossProducts(sound, heard, count, 2 * steps + 1);
  let best = 0;
  for (let shift = 1; shift <= 2 * steps; shift++) if (products[shift]! > products[best]!) best = shift;
  let heardEnergy = 1e-20;
  for (let i = best; i < best + count; i++) heardEnergy += heard[i]! * heard[i]!;
  const [a, b, c] = [products[best - 1] ?? 0, products[best]!, products[best + 1] ?? 0];
  const bend = a - 2 * b + c;
  const inside = best > 0 && best < 2 * steps && bend < 0;
  const part = inside ? (0.5 * (a - c)) / bend : 0;
  const peak = b - 0.25 * (a - c) * part;
  return {
    time: start + (best + part) / rate,
    correlation: peak / Math.sqrt((energy + 1e-20) * heardEnergy),
    gain: peak / (energy + 1e-20),
  };
}

/** Windows in which a click may be seen before a stroke covers it, s. */
export const clearWindows = [matchSeconds, 0.0035, 0.002] as const;

/**
 * Least share of a click's power that is left when it is taken off what is `heard` (`matchSeconds` at `rate` Hz), over
 * the longest and shorter starts of it: near 0 where this very click lies at this very time, about 1 where nothing does.
 */
export function leftOver(heard: Float32Array, sound: Float32Array, rate: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const seconds of clearWindows) {
    const count = Math.round(seconds * rate);
    let own = 1e-20;
    let left = 0;
    for (let i = 0; i < count; i++) {
      own += sound[i]! * sound[i]!;
      left += (heard[i]! - sound[i]!) ** 2;
    }
    least = Math.min(least, left / own);
  }
  return least;
}
