import { freshAfter, lowSound, ringingSeconds } from '../signal/low-sound.ts';
import type { Source } from '../signal/source.ts';
import { median } from '../stats/median.ts';
import { levelAt, onsetNear } from './measure-stroke.ts';
import type { Stroke } from './stroke.ts';
import {
  beginsThere,
  bestMatch,
  learnShape,
  type StrokeShape,
  shapeReach,
  shapeSeconds,
} from './stroke-shape.ts';

/** Strokes by which the level of a kind's shape is told. */
const unitsFrom = 12;
/** Standard error of a time read from the shape, s, with ample evidence; it grows as the evidence shrinks. */
const shapeTimeSe = 0.00012;
/**
 * Standard error of a level read from the shape with ample evidence, dB, measured on takes of recorded drums; and the error
 * that a stroke's own level may claim without giving way (of 0.7, 1 and 1.4 the one that leaves the fewest gross errors).
 */
const shapeLevelSe = { own: 1.4, givesWay: 0.7 };
/** A stroke's own attack is read where it lies this near the shape's onset, s. */
const ownAttack = 0.0007;

/** A take's softer or louder strokes. */
export interface StrokeKind {
  readonly shape: StrokeShape;
  /** Level of a stroke whose shape has gain 1, dBFS. */
  readonly unitDb: number;
}

/** A place where a kind's shape lies best. */
export interface KindMatch {
  /** Onset, s. */
  readonly time: number;
  /** Nats. */
  readonly evidence: number;
  /** Level that the shape's size there tells, dBFS. */
  readonly levelDb: number;
  /** Whether the shape's first so many seconds are there too. */
  readonly begins: (seconds: number) => boolean;
}

/**
 * What the surest of some strokes share, learned from at most `most` of them; null where those are fewer than six or
 * share nothing. Costs the learning of a shape, in proportion to the strokes learned from.
 *
 * @example strokeKind(source, strokes, 5) // null
 */
export function strokeKind(source: Source, strokes: readonly Stroke[], most: number): StrokeKind | null {
  const surest = strokes.toSorted((a, b) => b.evidence - a.evidence).slice(0, most);
  const shape = learnShape(
    source,
    surest.map(({ time }) => time),
  );
  if (shape === null) return null;
  const units = surest.slice(0, unitsFrom).flatMap(({ time, levelDb }) => {
    const match = kindNear(source, { shape, unitDb: 0 }, time - shapeReach, time + shapeReach);
    return match.evidence > 0 ? [levelDb - match.levelDb] : [];
  });
  return units.length === 0 ? null : { shape, unitDb: median(units) };
}

/**
 * Best place of a kind's shape with its onset between two times not far apart, s, to a sample of the shape's rate (about
 * 0.1 ms); predicted from the 66 ms before the first. Evidence 0 at `from` where the shape fits nowhere; how much noise
 * alone reaches: `masked-gaps.ts`.
 */
export function kindNear(source: Source, { shape, unitDb }: StrokeKind, from: number, to: number): KindMatch {
  const sound = lowSound(source, from - ringingSeconds - 0.002, to + shapeSeconds + 0.002);
  const at = Math.max(0, Math.round((from - sound.start) * sound.rate));
  const lags = Math.max(1, Math.round((to - from) * sound.rate));
  const fresh = freshAfter(sound, at, Math.min(lags + shape.samples.length, sound.samples.length - at));
  const { index, evidence, gain } = bestMatch(fresh, shape.samples, shape.energy, 0, lags);
  return {
    time: sound.start + (at + index) / sound.rate,
    evidence,
    levelDb: unitDb + 20 * Math.log10(Math.max(gain, 1e-9)),
    begins: (seconds) => beginsThere(fresh, shape.samples, index, gain, Math.round(seconds * sound.rate)),
  };
}

/**
 * Time and level of a stroke where its kind's shape lies, with standard errors: its own attack's where that is clear,
 * else the shape's. `previousTime` (s) is that of the stroke before, whose tail is taken off the level.
 */
export function placedBy(
  source: Source,
  { time, evidence, levelDb }: KindMatch,
  previousTime: number,
): Pick<Stroke, 'time' | 'timeSe' | 'levelDb' | 'levelSe'> {
  const own = onsetNear(source, time);
  const clear = Math.abs(own.time - time) < ownAttack;
  const onset = clear ? own : { time, timeSe: shapeTimeSe * Math.sqrt(1 + 10 / evidence) };
  const level = levelAt(source, onset, previousTime);
  const byEvidence = 10 / Math.LN10 / Math.sqrt(evidence / 2);
  if (level.levelSe <= Math.hypot(shapeLevelSe.givesWay, byEvidence)) return { ...onset, ...level };
  return { ...onset, levelDb, levelSe: Math.hypot(shapeLevelSe.own, byEvidence) };
}
