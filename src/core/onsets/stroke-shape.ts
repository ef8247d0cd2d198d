import { energyOf } from '../signal/energy-of.ts';
import { type FreshSound, freshAfter, lowSound, ringingSeconds } from '../signal/low-sound.ts';
import type { Source } from '../signal/source.ts';
import { median } from '../stats/median.ts';

/** What the strokes of a kind have in common: the start of their sound with its ringing predicted away. */
export interface StrokeShape {
  /** Hz. */
  readonly rate: number;
  /** From the onset on. */
  readonly samples: Float64Array;
  /** Sum of the squares of `samples`. */
  readonly energy: number;
}

/** How far a stroke may be from where it was heard when the shape is learned, s: a second wave was taken for it. */
export const shapeReach = 0.015;
export const shapeSeconds = 0.03;
/** Fewer strokes have nothing in common worth the name. */
const fewest = 6;
const passes = 4;
/** Waves taken for the first differ by this much among the strokes of a kind, s. */
const alignReach = 0.006;
/** Strokes less like the common shape than this share of the usual likeness have no part in it. */
const alikeShare = 0.7;
/** No stroke weighs more than as if its noise were this share of the usual, so that none is the shape by itself. */
const leastNoise = 0.1;
/**
 * Length over which the shape must stand out of its noise for its onset to be there, s, and by how much (power); by how much
 * its first sample must, and what share of the shape's peak that sample must reach.
 */
const onset = { seconds: 0.0015, ratio: 5, sample: 9, share: 0.08 };

/** How far the size of a shape's beginning may be from that of the whole: a share of it, and standard errors. */
const beginning = { share: 0.5, errors: 3 };

/** How well a shape lies somewhere in a sound. */
interface ShapeMatch {
  /** Index at which the onset lies. */
  readonly index: number;
  /** Log-likelihood ratio of the shape there against nothing, nats. */
  readonly evidence: number;
  /** Size against the shape. */
  readonly gain: number;
}

/**
 * Best place of a shape with its onset from index `from` up to but not including `to` of a fresh sound. Evidence of a
 * place is (Σ e·s)² / (2·σ²·Σ s²), 0 where the shape fits upside down; σ² is what the shape leaves there or what
 * the sound had before, whichever is less: a tail that dies away hides less than before. In noise the evidence of a place
 * exceeds x with probability erfc(√x)/2, by Wilks' theorem and for one sign of the size. Needs `to + shape.length` samples.
 *
 * @example bestMatch({ samples, noise: 0.01 }, shape, energy, 0, 300).index // 137, where the shape was put
 */
export function bestMatch(
  { samples, noise }: FreshSound,
  shape: ArrayLike<number>,
  energy: number,
  from: number,
  to: number,
): ShapeMatch {
  const length = shape.length;
  let own = 0;
  for (let i = from; i < from + length; i++) own += samples[i]! ** 2;
  let best: ShapeMatch = { index: from, evidence: 0, gain: 0 };
  for (let at = from; at < to; at++) {
    let product = 0;
    for (let i = 0; i < length; i++) product += samples[at + i]! * shape[i]!;
    const fitted = (product * product) / (energy + 1e-30);
    const variance = Math.min(noise, Math.max(own - fitted, 0) / length + 1e-14);
    const evidence = product > 0 ? fitted / (2 * variance) : 0;
    if (evidence > best.evidence) best = { index: at, evidence, gain: product / (energy + 1e-30) };
    own += samples[at + length]! ** 2 - samples[at]! ** 2;
  }
  return best;
}

/**
 * Learns the shape that strokes heard near `times` (s, the surest first) share. They are laid over each other where
 * they agree best, time after time; what they don't share, tails and noise, averages out, so that the first wave is
 * seen even where each stroke's own is drowned. Null with fewer than six, or where nothing stands out, as in noise.
 *
 * @example learnShape(source, []) // null
 */
export function learnShape(source: Source, times: readonly number[]): StrokeShape | null {
  if (times.length < fewest) return null;
  const { rate } = lowSound(source, 0, 0);
  const slack = Math.round(alignReach * rate);
  const reach = Math.round(shapeReach * rate);
  const length = reach + Math.round(shapeSeconds * rate);
  const heard = times.map((time) => {
    const from = time - shapeReach - alignReach;
    const sound = lowSound(source, from - ringingSeconds - 0.002, time + shapeSeconds + alignReach + 0.002);
    return freshAfter(sound, Math.round((from - sound.start) * rate), length + 2 * slack);
  });
  let laid: Laid[] = heard.map((fresh) => ({ fresh, place: slack, likeness: 1 }));
  let { mean, weight } = overlaid(laid, length);
  for (let pass = 0; pass < passes; pass++) {
    const energy = energyOf(mean);
    laid = heard.map((fresh) => {
      const { index, gain } = bestMatch(fresh, mean, energy, 0, 2 * slack + 1);
      const own = energyOf(fresh.samples.subarray(index, index + length));
      return { fresh, place: index, likeness: gain * Math.sqrt(energy / (own + 1e-30)) };
    });
    const likenesses = laid.map(({ likeness }) => likeness);
    const least = alikeShare * median(likenesses);
    ({ mean, weight } = overlaid(
      laid.filter(({ likeness }) => likeness >= least),
      length,
    ));
  }
  const at = onsetOf(mean, weight, rate);
  if (at === null) return null;
  const samples = mean.slice(at, at + Math.round(shapeSeconds * rate));
  return { rate, samples, energy: energyOf(samples) };
}

/**
 * Whether the first `count` samples of a shape are in the sound at `at` about as large as the whole of it (`gain`), as
 * far as the noise lets that be told: true where it hides them.
 *
 * @example beginsThere(fresh, shape, 20, 1, 30) // false where the first 30 samples are another sound
 */
export function beginsThere(
  { samples, noise }: FreshSound,
  shape: Float64Array,
  at: number,
  gain: number,
  count: number,
): boolean {
  let product = 0;
  let energy = 1e-30;
  for (let i = 0; i < Math.min(count, shape.length); i++) {
    product += samples[at + i]! * shape[i]!;
    energy += shape[i]! ** 2;
  }
  return (
    Math.abs(product / energy - gain) < beginning.share * gain + beginning.errors * Math.sqrt(noise / energy)
  );
}

/** A stroke's fresh sound and where in it the common shape's window lies. */
interface Laid {
  readonly fresh: FreshSound;
  readonly place: number;
  /** Correlation with the common shape. */
  readonly likeness: number;
}

/** Mean of the strokes, each weighted by how quiet it is round them; `weight` is the mean's inverse variance. */
function overlaid(laid: readonly Laid[], length: number): { mean: Float64Array; weight: number } {
  const mean = new Float64Array(length);
  const quietest = median(laid.map(({ fresh }) => fresh.noise)) * leastNoise;
  let weight = 0;
  for (const { fresh, place } of laid) {
    const own = 1 / Math.max(fresh.noise, quietest);
    weight += own;
    for (let i = 0; i < length; i++) mean[i]! += fresh.samples[place + i]! * own;
  }
  for (let i = 0; i < length; i++) mean[i]! /= weight;
  return { mean, weight };
}

/** First place where the common shape stands out of what noise is left in it and isn't far under its own peak. */
function onsetOf(mean: Float64Array, weight: number, rate: number): number | null {
  const run = Math.round(onset.seconds * rate);
  const peak = mean.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  const least = Math.max(onset.sample / weight, (onset.share * peak) ** 2);
  for (let i = 0; i + run < mean.length; i++) {
    const power = energyOf(mean.subarray(i, i + run)) / run;
    if (power >= onset.ratio / weight && mean[i]! ** 2 >= least) return i;
  }
  return null;
}
