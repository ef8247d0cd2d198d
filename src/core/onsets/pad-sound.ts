import { evenSample } from '../stats/even-sample.ts';
import type { Timbre } from './timbre.ts';

/** A sound as its class is decided: level (dBFS) and timbre. */
export interface Sounding {
  readonly levelDb: number;
  readonly timbre: Timbre;
  readonly evidence: number;
}

/** How the pad sounds at each level: a straight line for every figure of the timbre, and the scatter round it. */
export interface PadSound {
  readonly middleDb: number;
  readonly base: readonly number[];
  /** dB per dB of level: soft strokes are duller. */
  readonly slope: readonly number[];
  readonly scatter: readonly number[];
  /** Levels of the sounds it was learned from, dBFS; beyond them the slopes are less sure. */
  readonly fromDb: number;
  readonly toDb: number;
}

/** Strokes of one pad and two hands stay this near to each other, dB; measured on synthesised and recorded strokes. */
const reachDb = 5;
/**
 * Steepest slope believed, dB per dB. Measured, as the next four: half to twice finds the same strokes in 25 rendered
 * takes.
 */
const mostSlope = 0.45;
/** Standard error of a slope outside the levels it was learned from, dB per dB. */
const slopeError = 0.1;
/** Pairs nearer in level than this, dB, tell no slope; sounds compared and pairs tried. */
const levelApart = 4;
const sampled = 240;
const trials = 220;
/** No figure scatters less, dB; twice this takes two other sounds of those takes for strokes. */
const leastScatter = 1.5;
/** Sounds whose timbre is known this well make the model, dB; what stands in noise or tails would fit anything. */
const clearDb = 3;
/** Fewer sounds have no majority worth the name. */
export const fewestSounds = 12;

/**
 * Root mean square of a sound's distance from a pad's line, each figure over its scatter and error. In a sound cut
 * short by the next, what all band levels are off by together is the missing body's share and doesn't count. The
 * highest band may be left out: codecs and microphones let it in and out.
 */
export function distanceFrom(pad: PadSound, sound: Sounding): number {
  const { middleDb, base, slope, scatter } = pad;
  const { values, errors } = sound.timbre;
  const beyond = slopeError * Math.max(0, pad.fromDb - sound.levelDb, sound.levelDb - pad.toDb);
  const level = sound.levelDb - middleDb;
  const bandLevels = values.length - 2;
  let weights = 0;
  let common = 0;
  for (let i = 0; i < bandLevels; i++) {
    const weight = 1 / (scatter[i]! ** 2 + errors[i]! ** 2 + beyond ** 2);
    weights += weight;
    common += weight * (values[i]! - base[i]! - slope[i]! * level);
  }
  common = sound.timbre.cut ? common / weights : 0;
  let sum = 0;
  let top = 0;
  for (let i = 0; i < values.length; i++) {
    const off = values[i]! - base[i]! - slope[i]! * level - (i < bandLevels ? common : 0);
    const square = (off * off) / (scatter[i]! ** 2 + errors[i]! ** 2 + beyond ** 2);
    sum += square;
    if (i === 0 || i === bandLevels / 2) top += square;
  }
  return Math.sqrt(Math.min(sum / values.length, (sum - top) / (values.length - 2)));
}

/**
 * The sound that most attacks of a recording share: lines through pairs of them are tried, the one that most others
 * lie near is fitted to those (random sample consensus, Fischler & Bolles 1981, quoted from memory; the pairs are
 * walked in a fixed order, so that the same recording gives the same answer). Null with too few sounds.
 */
export function findPadSound(sounds: readonly Sounding[]): PadSound | null {
  if (sounds.length < fewestSounds) return null;
  const clear = sounds.filter(({ timbre }) => wholeError(timbre) < clearDb);
  const sample = evenSample(clear.length >= fewestSounds ? clear : sounds, sampled);
  const figures = sample[0]!.timbre.values.length;
  let best: { readonly pad: PadSound; readonly near: number } | null = null;
  for (let trial = 0; trial < trials; trial++) {
    const a = sample[(trial * 7) % sample.length]!;
    const b = sample[(trial * 13 + 5 + Math.floor(trial / sample.length)) % sample.length]!;
    const pad = lineThrough(a, b, figures);
    let near = 0;
    for (const sound of sample) if (distanceFrom(pad, sound) < 1) near++;
    if (near > (best?.near ?? 0)) best = { pad, near };
  }
  if (best === null) return null;
  const members = sample.filter((sound) => distanceFrom(best.pad, sound) < 1.3);
  return members.length >= 6 ? fitted(members, figures) : null;
}

const wholeError = ({ errors }: Timbre) => Math.hypot(...errors) / Math.sqrt(errors.length);

function lineThrough(a: Sounding, b: Sounding, figures: number): PadSound {
  const apart = a.levelDb - b.levelDb;
  const steep = Math.abs(apart) >= levelApart;
  const slope = Array.from({ length: figures }, (_, i) =>
    steep ? clamp((a.timbre.values[i]! - b.timbre.values[i]!) / apart, mostSlope) : 0,
  );
  const base = Array.from({ length: figures }, (_, i) => (a.timbre.values[i]! + b.timbre.values[i]!) / 2);
  return {
    middleDb: (a.levelDb + b.levelDb) / 2,
    base,
    slope,
    scatter: base.map(() => reachDb),
    fromDb: Number.NEGATIVE_INFINITY,
    toDb: Number.POSITIVE_INFINITY,
  };
}

/** Least squares of each figure against level, weighted by how well the figure is known. */
function fitted(members: readonly Sounding[], figures: number): PadSound {
  const middleDb = members.reduce((sum, { levelDb }) => sum + levelDb, 0) / members.length;
  const base: number[] = [];
  const slope: number[] = [];
  const scatter: number[] = [];
  for (let i = 0; i < figures; i++) {
    let [w, wx, wy, wxx, wxy] = [0, 0, 0, 0, 0];
    for (const { levelDb, timbre } of members) {
      const weight = 1 / (reachDb ** 2 / 4 + timbre.errors[i]! ** 2);
      const x = levelDb - middleDb;
      const y = timbre.values[i]!;
      w += weight;
      wx += weight * x;
      wy += weight * y;
      wxx += weight * x * x;
      wxy += weight * x * y;
    }
    const spread = wxx - (wx * wx) / w;
    const gradient = spread > 1e-6 ? clamp((wxy - (wx * wy) / w) / (spread + w), mostSlope) : 0;
    const level = (wy - gradient * wx) / w;
    const off = members.map(({ levelDb, timbre }) =>
      Math.abs(timbre.values[i]! - level - gradient * (levelDb - middleDb)),
    );
    off.sort((a, b) => a - b);
    base.push(level);
    slope.push(gradient);
    scatter.push(Math.max(leastScatter, 1.4826 * off[off.length >> 1]!));
  }
  const levels = members.map(({ levelDb }) => levelDb);
  return { middleDb, base, slope, scatter, fromDb: Math.min(...levels), toDb: Math.max(...levels) };
}

const clamp = (value: number, most: number) => Math.min(most, Math.max(-most, value));
