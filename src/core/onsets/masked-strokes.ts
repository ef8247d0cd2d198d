import type { Source } from '../signal/source.ts';
import { anyBetween } from '../stats/any-between.ts';
import { evenSample } from '../stats/even-sample.ts';
import { median } from '../stats/median.ts';
import { fillMaskedGaps } from './masked-gaps.ts';
import type { Stroke } from './stroke.ts';
import { kindNear, placedBy, type StrokeKind, strokeKind } from './stroke-kind.ts';
import { shapeReach } from './stroke-shape.ts';

/** A stroke with less evidence than this all but drowns in what it stands in, nats. */
const weakEvidence = 60;
/** Where half of the softer strokes have more than this, none was heard by a later wave, nats. */
const evident = 260;
/** Share of weak strokes, and how many at least, or of strokes heard late, from which on a take is looked through again. */
const worthwhile = { weak: 0.04, strokes: 3, late: 0.1 };
/** Strokes that a shape is learned from: to see whether first waves were missed, and at the most. */
const learnedFrom = { glance: 12, most: 48 };
/** Strokes nearer than this on both sides make a row, s. */
const rowSeconds = 0.7;
/** Evidence of its kind's shape that confirms a stroke, nats, and how far its level may be from the shape's, dB. */
const confirms = { evidence: 8, levelDb: 9 };
/** A stroke is moved when its shape begins this much away from where it was heard, s. */
const moved = 0.0015;
/** Nothing is moved to within this of another stroke, s. */
const apart = 0.006;

interface Checked {
  readonly stroke: Stroke;
  readonly confirmed: boolean;
}

/**
 * Looks a take through again whose softer strokes drown in the ringing and rattle of the louder ones: what its own
 * clear strokes have in common (`stroke-shape.ts`) finds them, tells their first wave where only a later one was
 * heard, and fills gaps. A take without weak strokes is left as it is, the very same strokes in a new list. `sounds` in
 * order of time and of every class; so is the answer. Linear in the number of strokes.
 *
 * @example findMasked(source, [stroke]) // [stroke]
 */
export function findMasked(source: Source, sounds: readonly Stroke[]): Stroke[] {
  const pads = sounds.filter(({ sound }) => sound === 'pad');
  const levels = pads.map(({ levelDb }) => levelDb).sort((a, b) => a - b);
  const middle = (levels[Math.floor(levels.length * 0.05)]! + levels[Math.floor(levels.length * 0.95)]!) / 2;
  const isSoft = ({ levelDb }: Stroke) => levelDb < middle;
  const softPads = pads.filter(isSoft);
  const placeOf = new Map(pads.map((stroke, i) => [stroke, i]));
  const checkAs = (kind: StrokeKind) => (stroke: Stroke) => {
    const i = placeOf.get(stroke)!;
    return check(source, stroke, kind, pads[i - 1], pads[i + 1]);
  };
  const weak = pads.filter(({ evidence }) => evidence < weakEvidence).length + doubtsInRow(sounds);
  if (weak < Math.max(worthwhile.strokes, worthwhile.weak * pads.length)) {
    if (softPads.length === 0 || median(softPads.map(({ evidence }) => evidence)) > evident)
      return [...sounds];
    const few = strokeKind(source, softPads, learnedFrom.glance);
    if (few === null) return [...sounds];
    const sample = evenSample(softPads, learnedFrom.glance);
    const late = sample.filter((stroke) => checkAs(few)(stroke).stroke !== stroke).length;
    if (late < worthwhile.late * sample.length) return [...sounds];
  }
  const soft = strokeKind(source, softPads, learnedFrom.most);
  if (soft === null) return [...sounds];
  const hardPads = pads.filter((stroke) => !isSoft(stroke));
  const loud = strokeKind(source, hardPads, learnedFrom.most);
  const asSoft = checkAs(soft);
  const asLoud =
    loud === null
      ? (stroke: Stroke) => ({ stroke, confirmed: stroke.evidence >= weakEvidence })
      : checkAs(loud);
  const checked = pads.map((stroke) => (isSoft(stroke) ? asSoft(stroke) : asLoud(stroke)));
  const own = withoutLaterWaves(checked);
  const isSure = ({ stroke, confirmed }: Checked) => confirmed || stroke.evidence >= weakEvidence;
  const sure = own.filter(isSure).map(({ stroke }) => stroke);
  const doubtful = own.filter((one) => !isSure(one)).map(({ stroke }) => stroke);
  if (sure.length < 2) return [...sounds];
  const strokes = fillMaskedGaps(source, sure, doubtful, soft);
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

/** Whether a stroke has its kind's shape, its time put right where only a later wave of it was heard. */
function check(
  source: Source,
  stroke: Stroke,
  kind: StrokeKind,
  before: Stroke | undefined,
  after: Stroke | undefined,
): Checked {
  const from = Math.max(stroke.time - shapeReach, (before?.time ?? Number.NEGATIVE_INFINITY) + apart);
  const to = Math.min(stroke.time + shapeReach, (after?.time ?? Number.POSITIVE_INFINITY) - apart);
  const match = kindNear(source, kind, from, to);
  const levelOff = Math.abs(match.levelDb - stroke.levelDb);
  const confirmed = match.evidence >= confirms.evidence && levelOff < confirms.levelDb;
  const late = stroke.time - match.time;
  if (!confirmed || Math.abs(late) < moved || (late > 0 && !match.begins(late))) return { stroke, confirmed };
  return {
    confirmed,
    stroke: { ...stroke, ...placedBy(source, match, before?.time ?? Number.NEGATIVE_INFINITY) },
  };
}
