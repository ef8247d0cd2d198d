import { median } from '../stats/median.ts';
import { quantile } from '../stats/quantile.ts';
import type { Finding, HeardRecording } from './heard-recording.ts';
import { binSeconds, type QuietCourse } from './quiet-course.ts';
import { allLevels, strokeCounts, strokeTimes } from './spoiled-measures.ts';
import { suddenFallsDb } from './sudden-falls.ts';
import { twoFloors } from './two-floors.ts';

/** A fall is held against the one before it over these times, s. */
const fall = { before: 0.03, after: 0.06 };
/**
 * Below this a sound made without a microphone ends in nothing, by steps that say nothing, dB of the mean square step.
 */
const lastBitDb = -88;
/** The stroke's own beginning is left out, s. */
const fromSeconds = 0.012;
/**
 * So much faster than before nothing dies away by itself, dB: toms and pads in bare rooms came to 13, what a gate with
 * a fast release cuts off falls by 20 and more (`reports/recording-check.md`).
 */
const leastDb = 16;
/**
 * Pauses that hold only the flicker of the last of 16 bits, dB of the mean square step (dither comes to −93), though
 * strokes are as loud as this and the strokes' own band is empty too (it isn't where only the hiss is cut off): a
 * microphone in a room always hears more. An electronic pad's output is as quiet, and so loses nothing; where strokes
 * are missing as well, something closed. Our judgement.
 */
const dead = { fromDb: -110, toDb: -92, placeDb: -88, accentDb: -45 };

/**
 * By how much a sound dies away faster than it did just before, dB over 60 ms: the sum of dying sounds over a steady
 * noise only ever gets slower (its logarithm is convex), so that more than chance means that something closed.
 */
function kneeDb(heardDb: readonly number[]): number {
  const courseDb = heardDb.map((level) => Math.max(level, lastBitDb));
  const before = Math.round(fall.before / binSeconds);
  const after = Math.round(fall.after / binSeconds);
  let most = 0;
  for (let i = before + Math.round(fromSeconds / binSeconds); i + after < courseDb.length; i++) {
    const fell = courseDb[i - before]! - courseDb[i]!;
    const falls = courseDb[i]! - courseDb[i + after]!;
    most = Math.max(most, falls - (after / before) * Math.max(0, fell));
  }
  return most;
}

/** Decays no shorter than this may show a knee; the long ones are asked by themselves too. */
const bins = { usual: 20, long: 60 };

/** The knee that the middle one of a take's sounds has, or of those that a long quiet follows. */
function kneeOf({ decaysDb }: QuietCourse): number {
  const middle = (least: number) => {
    const some = decaysDb.filter(({ length }) => length >= least);
    return some.length === 0 ? 0 : median(some.map(kneeDb));
  };
  return Math.max(middle(bins.usual), middle(bins.long));
}

/** Whether nothing at all is left in pauses, as no microphone hears it. */
function isDead({ quiet, hearing, noiseDb }: HeardRecording): boolean {
  const silent = quiet.pauseDb <= dead.toDb && quiet.pauseDb >= dead.fromDb && noiseDb <= dead.placeDb;
  if (!silent || hearing.sounds.length === 0) return false;
  return (
    quantile(
      hearing.sounds.map(({ levelDb }) => levelDb),
      0.9,
    ) >= dead.accentDb
  );
}

/** A gate that holds the floor of the place open for a while shows it in so many places, and this share of sounds. */
const floors = { fewest: 5, share: 0.08 };
/**
 * Taps that don't open a gate are turned down by a fixed amount: none lies in a gap of so many dB amid the others, so
 * many and such a share of them beneath it. With pauses at the last bit, dB of the mean square step. Our judgement.
 */
const turnedDown = { gapDb: 12, fewest: 3, share: 0.04, pauseDb: -91 };
/** So many strokes missing or extra, as a share of those written: it closed over some, or opened for what is none. */
const wrongShare = 0.01;

/** Whether some taps lie under a gap as no hand leaves it. */
function turnsTapsDown({ quiet, performance }: HeardRecording): boolean {
  if (!(quiet.pauseDb <= turnedDown.pauseDb && quiet.pauseDb >= dead.fromDb)) return false;
  const taps = performance.strokes.flatMap(({ slot, levelDb }) => (slot.accent ? [] : [levelDb]));
  taps.sort((a, b) => a - b);
  const fewest = Math.max(turnedDown.fewest, turnedDown.share * taps.length);
  return taps.some(
    (level, i) => i >= fewest && taps.length - i >= fewest && level - taps[i - 1]! >= turnedDown.gapDb,
  );
}

/**
 * A gate: sounds end in a fall that no sound makes by itself, the place has two floors, some taps are turned down, or
 * pauses are dead. Soft taps may be cut off or missing after silence.
 */
export function gating(heard: HeardRecording): Finding | null {
  const { hearing, performance, quiet, sound } = heard;
  const kneeDb = kneeOf(quiet);
  const suddenDb = suddenFallsDb(quiet.decaysDb);
  const isCutOff = kneeDb >= leastDb || suddenDb > 0 || turnsTapsDown(heard);
  const showsFloors =
    twoFloors(sound, quiet.pauseDb, hearing.sounds, hearing.click?.times) >=
    Math.max(floors.fewest, floors.share * hearing.sounds.length);
  if (!isCutOff && !showsFloors && !isDead(heard)) return null;
  const { alignment, slots } = performance;
  // It may open for what is no stroke, too.
  const wrong = alignment.missed.length + (showsFloors ? alignment.extra.length : 0);
  const losesStrokes = wrong >= wrongShare * slots.length;
  // A click that is cut off is taken off wrongly, and what is left of it moves strokes.
  const times = showsFloors && hearing.click !== null ? strokeTimes : [];
  return {
    code: 'gated',
    facts: { fallsDb: Math.max(kneeDb, suddenDb) },
    spoils: [...(isCutOff || losesStrokes ? [...allLevels, ...strokeCounts] : []), ...times],
  };
}
