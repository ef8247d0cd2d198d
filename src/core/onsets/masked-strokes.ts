import { freshAfter, lowSound, ringingSeconds } from '../signal/low-sound.ts';
import type { Source } from '../signal/source.ts';
import { median } from '../stats/median.ts';
import { anyBetween } from './any-between.ts';
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
import { usualInterval } from './usual-interval.ts';

/** A stroke with less evidence than this all but drowns in what it stands in, nats. */
const weakEvidence = 60;
/** Where half of the softer strokes have more than this, none was heard by a later wave, nats. */
const evident = 260;
/** Share of weak strokes, and how many at least, from which on a take is looked through again. */
const worthwhile = { weak: 0.04, strokes: 3, late: 0.1 };
/** Strokes that a shape is learned from: to see whether first waves were missed, and at the most. */
const learnedFrom = { glance: 12, most: 48 };
/** Strokes nearer than this on both sides make a row, s. */
const rowSeconds = 0.7;
/** Evidence of a stroke's shape that confirms it, finds one where one is due, or anywhere else in a gap, nats. */
const shapeEvidence = { confirm: 8, due: 4.5, anywhere: 10 };
/** How far the shape's size may be from what the stroke's level says, dB. */
const likeLevelDb = 9;
/** A stroke is moved when its shape begins this much away from where it was heard, s. */
const moved = 0.0015;
/** Nothing is moved to within this of another stroke, s. */
const apart = 0.006;
/** Gaps in a row, in usual intervals, and how near an even division of them a stroke is due. */
const gaps = { shortest: 1.6, longest: 4.4, scatter: 0.07 };
/** An unconfirmed weak stroke gives way to one found within this share of the usual interval. */
const givesWay = 0.45;
/** A stroke found lies at least this share of the usual interval from its neighbours. */
const ownPlace = 0.5;
/** A weak unconfirmed sound so soon after a stroke and this far under it is a later wave of it, dB. */
const laterWaveDb = 6;
/** Places predicted together, s. */
const stepSeconds = 0.005;
/** Standard error of a time read from the shape, s, with ample evidence; it grows as the evidence shrinks. */
const shapeTimeSe = 0.00012;
/** A stroke's own attack is read where it lies this near the shape's onset, s. */
const ownAttack = 0.0007;

interface Kind {
  readonly shape: StrokeShape;
  /** Level of a stroke whose shape has gain 1, dB. */
  readonly unitDb: number;
}

interface Checked {
  readonly stroke: Stroke;
  readonly confirmed: boolean;
}

/**
 * Looks a take through again whose softer strokes drown in the ringing and rattle of the louder ones: what its own
 * clear strokes have in common (`stroke-shape.ts`) finds them, tells their first wave where only a later one was
 * heard, and fills gaps. A take without weak strokes is left as it is. Linear in the number of strokes.
 */
export function findMasked(source: Source, sounds: readonly Stroke[]): Stroke[] {
  const pads = sounds.filter(({ sound }) => sound === 'pad');
  const levels = pads.map(({ levelDb }) => levelDb).sort((a, b) => a - b);
  const middle = (levels[Math.floor(levels.length * 0.05)]! + levels[Math.floor(levels.length * 0.95)]!) / 2;
  const isSoft = ({ levelDb }: Stroke) => levelDb < middle;
  const softPads = pads.filter(isSoft);
  const placeOf = new Map(pads.map((stroke, i) => [stroke, i]));
  const checkAs = (kind: Kind) => (stroke: Stroke) => {
    const i = placeOf.get(stroke)!;
    return check(source, stroke, kind, pads[i - 1], pads[i + 1]);
  };
  const weak = pads.filter(({ evidence }) => evidence < weakEvidence).length + doubtsInRow(sounds);
  if (weak < Math.max(worthwhile.strokes, worthwhile.weak * pads.length)) {
    if (softPads.length === 0 || median(softPads.map(({ evidence }) => evidence)) > evident)
      return [...sounds];
    const few = kindOf(source, softPads, learnedFrom.glance);
    if (few === null) return [...sounds];
    const sample = everyNth(softPads, learnedFrom.glance);
    const late = sample.filter((stroke) => checkAs(few)(stroke).stroke !== stroke).length;
    if (late < worthwhile.late * sample.length) return [...sounds];
  }
  const soft = kindOf(source, softPads, learnedFrom.most);
  if (soft === null) return [...sounds];
  const hardPads = pads.filter((stroke) => !isSoft(stroke));
  const loud = kindOf(source, hardPads, learnedFrom.most);
  const asSoft = checkAs(soft);
  const asLoud =
    loud === null
      ? (stroke: Stroke) => ({ stroke, confirmed: stroke.evidence >= weakEvidence })
      : checkAs(loud);
  const checked = pads.map((stroke) => (isSoft(stroke) ? asSoft(stroke) : asLoud(stroke)));
  const strokes = filled(source, withoutLaterWaves(checked), soft);
  const times = strokes.map(({ time }) => time).sort((a, b) => a - b);
  const others = sounds.filter(
    ({ sound, time }) => sound !== 'pad' && !anyBetween(times, time - shapeReach, time + shapeReach),
  );
  return [...others, ...strokes].sort((a, b) => a.time - b.time);
}

/** Sounds taken for something else where strokes lie close on both sides. */
function doubtsInRow(sounds: readonly Stroke[]): number {
  let doubts = 0;
  let since = 0;
  let last = Number.NEGATIVE_INFINITY;
  for (const { sound, time } of sounds) {
    if (sound === 'pad') {
      if (time - last < rowSeconds) doubts += since;
      since = 0;
      last = time;
    } else if (sound !== 'click') since++;
  }
  return doubts;
}

/** A stroke so soon after one that was moved is what was taken for it before: a later wave of the same. */
function withoutLaterWaves(checked: readonly Checked[]): Checked[] {
  return checked.filter(({ stroke, confirmed }, i) => {
    const before = checked[i - 1];
    return !(before?.confirmed && !confirmed && stroke.time - before.stroke.time < shapeReach);
  });
}

function kindOf(source: Source, strokes: readonly Stroke[], most: number): Kind | null {
  const surest = strokes.toSorted((a, b) => b.evidence - a.evidence).slice(0, most);
  const shape = learnShape(
    source,
    surest.map(({ time }) => time),
  );
  if (shape === null) return null;
  const units = surest
    .slice(0, learnedFrom.glance)
    .map((stroke) => ({
      stroke,
      match: near(source, shape, stroke.time - shapeReach, stroke.time + shapeReach),
    }))
    .filter(({ match }) => match.gain > 0)
    .map(({ stroke, match }) => stroke.levelDb - 20 * Math.log10(match.gain));
  return { shape, unitDb: units.sort((a, b) => a - b)[units.length >> 1] ?? 0 };
}

interface Near {
  readonly time: number;
  readonly evidence: number;
  readonly gain: number;
  /** Whether the shape's first so many seconds are there too. */
  readonly begins: (seconds: number) => boolean;
}

/** Best place of the shape with its onset between two times not far apart, s, predicted from before the first. */
function near(source: Source, shape: StrokeShape, from: number, to: number): Near {
  const sound = lowSound(source, from - ringingSeconds - 0.002, to + shapeSeconds + 0.002);
  const at = Math.max(0, Math.round((from - sound.start) * sound.rate));
  const lags = Math.max(1, Math.round((to - from) * sound.rate));
  const fresh = freshAfter(sound, at, Math.min(lags + shape.samples.length, sound.samples.length - at));
  const { index, evidence, gain } = bestMatch(fresh, shape.samples, shape.energy, 0, lags);
  return {
    time: sound.start + (at + index) / sound.rate,
    evidence,
    gain,
    begins: (seconds) => beginsThere(fresh, shape.samples, index, gain, Math.round(seconds * sound.rate)),
  };
}

/** Whether a stroke has its kind's shape, its time put right where only a later wave of it was heard. */
function check(
  source: Source,
  stroke: Stroke,
  { shape, unitDb }: Kind,
  before: Stroke | undefined,
  after: Stroke | undefined,
): Checked {
  const from = Math.max(stroke.time - shapeReach, (before?.time ?? Number.NEGATIVE_INFINITY) + apart);
  const to = Math.min(stroke.time + shapeReach, (after?.time ?? Number.POSITIVE_INFINITY) - apart);
  const match = near(source, shape, from, to);
  const levelOff = unitDb + 20 * Math.log10(match.gain) - stroke.levelDb;
  const confirmed = match.evidence >= shapeEvidence.confirm && Math.abs(levelOff) < likeLevelDb;
  const late = stroke.time - match.time;
  if (!confirmed || Math.abs(late) < moved || (late > 0 && !match.begins(late))) return { stroke, confirmed };
  return {
    confirmed,
    stroke: { ...stroke, ...placed(source, match, unitDb, before?.time ?? Number.NEGATIVE_INFINITY) },
  };
}

/** Time and level of a stroke found by its shape. */
function placed(source: Source, { time, evidence, gain }: Near, unitDb: number, before: number) {
  const own = onsetNear(source, time);
  const sure = Math.abs(own.time - time) < ownAttack;
  const onset = sure ? own : { time, timeSe: shapeTimeSe * Math.sqrt(1 + 10 / evidence) };
  const level = levelAt(source, onset.time, before);
  const shapeSe = Math.hypot(0.7, 10 / Math.LN10 / Math.sqrt(evidence / 2));
  const byShape = level.levelSe > shapeSe;
  return { ...onset, ...(byShape ? { levelDb: unitDb + 20 * Math.log10(gain), levelSe: shapeSe } : level) };
}

/** Strokes of the soft kind where a row of strokes has a gap, unconfirmed weak ones giving way to them. */
function filled(source: Source, checked: readonly Checked[], soft: Kind): Stroke[] {
  const isSure = ({ stroke, confirmed }: Checked) => confirmed || stroke.evidence >= weakEvidence;
  const sure = checked.filter(isSure).map(({ stroke }) => stroke);
  const doubtful = checked.filter((one) => !isSure(one)).map(({ stroke }) => stroke);
  const found: { readonly stroke: Stroke; readonly usual: number }[] = [];
  for (let i = 1; i < sure.length; i++) {
    const [from, to] = [sure[i - 1]!.time, sure[i]!.time];
    const usual = usualInterval(sure, i);
    if (to - from < gaps.shortest * usual || to - from > gaps.longest * usual) continue;
    for (const match of matchesBetween(source, soft.shape, from, to, usual)) {
      const { sound: _, ...rest } = sure[i - 1]!;
      const stroke = { ...rest, ...placed(source, match, soft.unitDb, from) };
      found.push({ usual, stroke: { ...stroke, sound: 'pad', evidence: match.evidence, timbre: null } });
    }
  }
  const stays = ({ time, levelDb }: Stroke) => {
    const next = sure.findIndex((stroke) => stroke.time > time);
    const before = sure.at(next < 0 ? -1 : next - 1);
    const own = givesWay * usualInterval(sure, next < 1 ? sure.length - 1 : next);
    const isLaterWave =
      before && next !== 0 && time - before.time < own && levelDb < before.levelDb - laterWaveDb;
    return (
      !isLaterWave && !found.some(({ stroke, usual }) => Math.abs(stroke.time - time) < givesWay * usual)
    );
  };
  return [...sure, ...doubtful.filter(stays), ...found.map(({ stroke }) => stroke)];
}

/**
 * Places in a gap where the shape lies well enough, the best first. A row divides a gap evenly: how far a place is off
 * takes from its evidence as a player's scatter would.
 */
function matchesBetween(source: Source, shape: StrokeShape, from: number, to: number, usual: number): Near[] {
  const parts = Math.round((to - from) / usual);
  const part = (to - from) / parts;
  const margin = ownPlace * usual;
  const all: { readonly match: Near; readonly worth: number }[] = [];
  for (let at = from + margin; at < to - margin; at += stepSeconds) {
    const match = near(source, shape, at, Math.min(at + stepSeconds, to - margin));
    const place = (match.time - from) / part;
    const off = ((place - Math.round(place)) * part) / (gaps.scatter * usual);
    const worth = match.evidence - off ** 2 / 2;
    const likeLevel = Math.abs(20 * Math.log10(match.gain)) < likeLevelDb;
    if (likeLevel && (worth >= shapeEvidence.due || match.evidence >= shapeEvidence.anywhere)) {
      all.push({ match, worth });
    }
  }
  all.sort((a, b) => b.worth - a.worth);
  const taken: Near[] = [];
  for (const { match } of all) {
    if (taken.length + 1 < parts && taken.every(({ time }) => Math.abs(time - match.time) > margin))
      taken.push(match);
  }
  return taken;
}

function everyNth<T>(values: readonly T[], most: number): readonly T[] {
  if (values.length <= most) return values;
  return Array.from({ length: most }, (_, i) => values[Math.floor((i * values.length) / most)]!);
}
