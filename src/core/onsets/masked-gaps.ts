import type { Source } from '../signal/source.ts';
import { anyBetween } from '../stats/any-between.ts';
import type { Stroke } from './stroke.ts';
import { type KindMatch, kindNear, placedBy, type StrokeKind } from './stroke-kind.ts';
import { gapIntervals, usualInterval } from './usual-interval.ts';

/**
 * Evidence of a shape where a stroke is due, and anywhere else in a gap, nats. White noise reaches them in one of 8 and of
 * some 400 stretches of 5 ms; what keeps it out is that it is softer than the kind: of gaps of nothing but noise 0 of 120
 * are filled where strokes of the kind have 200 nats, 2 where they have 60, 17 where they have 30 (measured).
 */
const enough = { due: 4.5, anywhere: 10 };
/** How far players scatter round an even division of a gap, in usual intervals. */
const scatter = 0.07;
/** A stroke found lies at least this share of the usual interval from its neighbours. */
const ownPlace = 0.5;
/** A stroke in doubt gives way to one found within this share of the usual interval. */
const givesWay = 0.45;
/** A sound in doubt so soon after a stroke and this far under it is a later wave of it, dB. */
const laterWaveDb = 6;
/** How far from its kind's usual level a stroke found may be, dB. */
const likeLevelDb = 9;
/** Places predicted together, s. */
const stepSeconds = 0.005;

/**
 * Fills gaps in a row of two or more sure strokes with those found by the kind's shape; what was in doubt gives way to
 * them. Where the shape isn't found the gap stays. Everything in order of time; costs a prediction for each 5 ms of gaps.
 *
 * @example fillMaskedGaps(source, strokes, [], kind) // the very same strokes where there is no gap among them
 */
export function fillMaskedGaps(
  source: Source,
  sure: readonly Stroke[],
  doubtful: readonly Stroke[],
  kind: StrokeKind,
): Stroke[] {
  const found: Stroke[] = [];
  const kept: Stroke[] = [];
  let next = 0;
  for (let i = 0; i <= sure.length; i++) {
    const before = sure[i - 1];
    const after = sure[i];
    const from = before?.time ?? Number.NEGATIVE_INFINITY;
    const to = after?.time ?? Number.POSITIVE_INFINITY;
    const usual = usualInterval(sure, Math.min(Math.max(i, 1), sure.length - 1));
    const isGap = to - from >= gapIntervals.shortest * usual && to - from <= gapIntervals.longest * usual;
    const matches = isGap ? matchesBetween(source, kind, from, to, usual) : [];
    for (const match of matches) {
      const { time, timeSe, levelDb, levelSe } = placedBy(source, match, from);
      const { evidence } = match;
      found.push({ time, timeSe, levelDb, levelSe, evidence, sound: 'pad', timbre: null });
    }
    const times = matches.map(({ time }) => time).sort((a, b) => a - b);
    for (; next < doubtful.length && doubtful[next]!.time < to; next++) {
      const { time, levelDb } = doubtful[next]!;
      const reach = givesWay * usual;
      const laterWave = before && time - from < reach && levelDb < before.levelDb - laterWaveDb;
      if (!laterWave && !anyBetween(times, time - reach, time + reach)) kept.push(doubtful[next]!);
    }
  }
  return [...sure, ...kept, ...found].sort((a, b) => a.time - b.time);
}

/**
 * Places in a gap where the shape lies well enough, the best first. A row divides a gap evenly: how far a place is off
 * takes from its evidence as a player's scatter would.
 */
function matchesBetween(
  source: Source,
  kind: StrokeKind,
  from: number,
  to: number,
  usual: number,
): KindMatch[] {
  const parts = Math.round((to - from) / usual);
  const part = (to - from) / parts;
  const margin = ownPlace * usual;
  const all: { readonly match: KindMatch; readonly worth: number }[] = [];
  for (let at = from + margin; at < to - margin; at += stepSeconds) {
    const match = kindNear(source, kind, at, Math.min(at + stepSeconds, to - margin));
    const place = (match.time - from) / part;
    const off = ((place - Math.round(place)) * part) / (scatter * usual);
    const worth = match.evidence - off ** 2 / 2;
    const likeLevel = Math.abs(match.levelDb - kind.unitDb) < likeLevelDb;
    if (likeLevel && (worth >= enough.due || match.evidence >= enough.anywhere)) {
      all.push({ match, worth });
    }
  }
  all.sort((a, b) => b.worth - a.worth);
  const taken: KindMatch[] = [];
  for (const { match } of all) {
    if (taken.length + 1 < parts && taken.every(({ time }) => Math.abs(time - match.time) > margin))
      taken.push(match);
  }
  return taken;
}
