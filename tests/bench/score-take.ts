import { median } from '../../src/core/stats/median.ts';
import type { BenchTake } from './bench-take.ts';
import { matchEvents } from './match-events.ts';

/** One stroke that a program says it heard. */
export interface HeardEvent {
  readonly time: number;
  readonly timeSe?: number;
  readonly levelDb?: number;
  readonly levelSe?: number;
}

/** One stroke of the truth and what was heard of it. */
export interface StrokeError {
  readonly accent: boolean;
  /** Heard minus true time, the take's constant part taken off, s. */
  readonly time: number;
  readonly timeSe: number | null;
  /** Heard minus dry level, the take's constant part taken off, dB. */
  readonly level: number | null;
  readonly levelSe: number | null;
}

/** How a list of events agrees with a take. */
export interface TakeScore {
  readonly take: string;
  readonly group: string;
  readonly strokes: number;
  readonly heard: number;
  readonly within10Ms: number;
  readonly within3Ms: number;
  readonly errors: readonly StrokeError[];
  /** Constant part of the times, s, and of the levels, dB. */
  readonly offset: number;
  readonly levelOffset: number;
  /** Places in the truth of strokes that weren't heard, and of events that aren't there. */
  readonly missed: readonly number[];
  readonly surplus: readonly number[];
}

const wide = 0.01;
const narrow = 0.003;
/** Offsets that are looked for, s: of a program that should have none, and of those with a delay of their own. */
export const widestOffset = { own: 0.003, others: 0.04 };

/**
 * Scores what was heard against a take. The constant offset is the one that best agrees with the truth. A stick's
 * own bounces may be heard or not. `forgiven`: times (s) near which an event that is no stroke isn't held against the
 * program, for those that don't claim to tell strokes from other sounds. A constant offset is looked for up to
 * `widest` (s).
 */
export function scoreTake(
  take: Omit<BenchTake, 'samples'>,
  heard: readonly HeardEvent[],
  forgiven: readonly number[] = [],
  widest = widestOffset.own,
): TakeScore {
  const { strokes } = take.truth;
  const offset = constantOffset(
    strokes.map((stroke) => stroke.time),
    heard.map((event) => event.time),
    widest,
  );
  const wanted = strokes.flatMap((stroke, i) => (stroke.role === 'bounce' ? [] : [i]));
  const wantedTimes = wanted.map((i) => strokes[i]!.time);
  const times = heard.map((event) => event.time - offset);
  const pairs = matchEvents(wantedTimes, times, wide);
  const matched = new Set(pairs.map((pair) => pair.estimate));
  const excused = [
    ...strokes.filter((stroke) => stroke.role === 'bounce').map((stroke) => stroke.time),
    ...forgiven,
  ];
  const surplus = times.flatMap((time, e) => {
    if (matched.has(e)) return [];
    return excused.some((other) => Math.abs(other - time) <= 1.5 * wide) ? [] : [e];
  });

  const levels = pairs.flatMap((pair) => {
    const levelDb = heard[pair.estimate]!.levelDb;
    return levelDb === undefined ? [] : [levelDb - take.dryLevels[wanted[pair.reference]!]!];
  });
  const levelOffset = levels.length > 0 ? median(levels) : Number.NaN;
  const errors = pairs.map(({ reference, estimate }): StrokeError => {
    const stroke = wanted[reference]!;
    const { levelDb, levelSe, timeSe } = heard[estimate]!;
    return {
      accent: strokes[stroke]!.accent,
      time: times[estimate]! - wantedTimes[reference]!,
      timeSe: timeSe ?? null,
      level: levelDb === undefined ? null : levelDb - take.dryLevels[stroke]! - levelOffset,
      levelSe: levelSe ?? null,
    };
  });
  const found = new Set(pairs.map((pair) => pair.reference));
  return {
    take: take.name,
    group: take.group,
    strokes: wanted.length,
    heard: pairs.length + surplus.length,
    within10Ms: pairs.length,
    within3Ms: matchEvents(wantedTimes, times, narrow).length,
    errors,
    offset,
    levelOffset,
    missed: wanted.filter((_, i) => !found.has(i)),
    surplus,
  };
}

/** The shift, at most `widest`, on which most estimates agree within ±3 ms, and of those agreeing the median; s. */
export function constantOffset(
  reference: readonly number[],
  estimates: readonly number[],
  widest: number,
): number {
  const apart: number[] = [];
  let from = 0;
  for (const time of reference) {
    while (from < estimates.length && estimates[from]! < time - widest) from++;
    for (let e = from; e < estimates.length && estimates[e]! <= time + widest; e++) {
      apart.push(estimates[e]! - time);
    }
  }
  if (apart.length === 0) return 0;
  apart.sort((a, b) => a - b);
  let best: readonly [number, number] = [0, 1];
  for (let i = 0, end = 0; i < apart.length; i++) {
    while (end < apart.length && apart[end]! - apart[i]! <= 2 * narrow) end++;
    if (end - i > best[1] - best[0]) best = [i, end];
  }
  return median(apart.slice(...best));
}
