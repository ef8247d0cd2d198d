import { extent } from '../stats/extent.ts';
import { median } from '../stats/median.ts';
import type { Finding, HeardRecording } from './heard-recording.ts';
import { allLevels, strokeCounts } from './spoiled-measures.ts';

/** Clicks at the start, when nobody plays yet, and how many of them must be heard to say that clicks are. */
const countIn = { clicks: 4, fewest: 3 };
/** A click is as late as the other to so much, s; sticks struck to count in scatter by many times that. */
const alike = 0.001;
/** Ways of a click to the recording, s, less and more than what is taken for it. */
const ways = { least: -0.05, most: 0.45 };
/** The tempo changes where the longest beat is so many times the shortest. */
const changes = 1.02;
/** A click that was found for less than this share of all was found for one tempo alone. */
const found = 0.6;
/** So far under the taps a click changes no level by half a decibel, dB. */
const softDb = 10;

/** The level of the clicks that open the take as they are heard, dB, or null where they aren't. */
function heardLevel({ hearing, playedClick }: HeardRecording): number | null {
  const times = playedClick?.times.slice(0, countIn.clicks) ?? [];
  const later = times.flatMap((time) =>
    hearing.sounds.flatMap(({ time: heard, levelDb }) =>
      heard - time > ways.least && heard - time < ways.most ? [{ time, by: heard - time, levelDb }] : [],
    ),
  );
  for (const { by } of later) {
    const same = later.filter((one) => Math.abs(one.by - by) < alike);
    if (new Set(same.map(({ time }) => time)).size >= countIn.fewest)
      return median(same.map(({ levelDb }) => levelDb));
  }
  return null;
}

/**
 * The click that was played is in the recording, its tempo changes, and it couldn't be taken off: it isn't known when
 * which of its sounds was put out, or they couldn't be learned. It can't be told apart from strokes then: what is
 * counted is wrong, and levels unless it is soft.
 */
export function changingClick(heard: HeardRecording): Finding | null {
  const { hearing, performance, playedClick } = heard;
  const { times = [], audible } = playedClick ?? {};
  const beats = times.slice(1).map((time, i) => time - times[i]!);
  const { least, most } = extent(beats);
  if (beats.length < countIn.clicks || most < changes * least) return null;
  const sounded = times.filter((_, i) => audible?.[i] ?? true);
  if (hearing.click?.put?.whole) return null;
  if (hearing.click !== null && !hearing.click.put && hearing.click.times.length >= found * sounded.length)
    return null;
  const levelDb = heardLevel(heard);
  if (levelDb === null) return null;
  const taps = performance.strokes.filter(({ slot }) => !slot.accent).map((stroke) => stroke.levelDb);
  const isSoft = taps.length > 0 && levelDb < median(taps) - softDb;
  return { code: 'click-changes', facts: {}, spoils: [...strokeCounts, ...(isSoft ? [] : allLevels)] };
}
