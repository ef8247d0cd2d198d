import type { ClickTimes } from '../click/click-times.ts';
import { type ClickVoice, findClicks } from '../click/find-clicks.ts';
import { findPutClicks } from '../click/find-put-clicks.ts';
import { silentBeyond } from '../click/silent-beyond.ts';
import { withoutClicks } from '../click/without-clicks.ts';
import { bandLayout } from '../signal/band-layout.ts';
import type { Source } from '../signal/source.ts';
import type { WorkTold } from '../signal/work-told.ts';
import { median } from '../stats/median.ts';
import { enoughEvidence } from './attack-chain.ts';
import { type AttacksFound, attacksOf } from './attack-search.ts';
import { clickRemains } from './click-remains.ts';
import { fillGaps } from './fill-gaps.ts';
import { findMasked } from './masked-strokes.ts';
import { measureStroke } from './measure-stroke.ts';
import { mergeWaves } from './merge-waves.ts';
import { withRoomError } from './room-error.ts';
import { roomSound } from './room-sound.ts';
import { classifySounds } from './sound-classes.ts';
import type { HeardClick, Hearing, Stroke } from './stroke.ts';

/** A metronome whose clicks are taken off. */
interface TakenOff {
  readonly voices: readonly ClickVoice[];
  readonly click: Omit<HeardClick, 'levelDb'>;
}

/**
 * A take's softest strokes lie at most this far under its loud ones, dB: taps 34 under accents, and their scatter.
 * Measured on the detection benchmark's takes: without a bound the same strokes; with 34 nine of 48 where taps lie that
 * deep are lost.
 */
export const deepestDb = 46;

/**
 * What only the whole of a recording tells of the attacks found in it: its metronome, whose sound is taken off before the
 * search runs again; which sound is the pad's; strokes that drown; gaps; the room. `put`: clicks that are known to have been
 * put out, by their sound. `tell` hears of the second search.
 */
export function settleHearing(
  source: Source,
  found: AttacksFound,
  tell?: WorkTold,
  put?: readonly ClickTimes[],
): Hearing {
  const noiseFloorDb = 10 * Math.log10(2 * found.floorPower);
  const clicks = (put && knownClicks(source, found, put)) ?? unknownClicks(source, found);
  return clicks === null
    ? { sounds: padAndOthers(source, found, () => true), noiseFloorDb, click: null }
    : hearBesideClicks(source, clicks, noiseFloorDb, tell);
}

/** Clicks known to be put out, where they are heard. */
function knownClicks(source: Source, { attacks }: AttacksFound, put: readonly ClickTimes[]): TakenOff | null {
  const found = findPutClicks(source, attacks, put);
  if (found === null) return null;
  const { voices, clock, whole } = found;
  const times = voices.flatMap((voice) => voice.times).sort((a, b) => a - b);
  const period = median(times.slice(1).map((time, i) => time - times[i]!));
  return { voices, click: { times, period, put: { ...clock, whole } } };
}

function unknownClicks(source: Source, { attacks }: AttacksFound): TakenOff | null {
  const found = findClicks(source, attacks);
  if (found === null) return null;
  const { voices, times, period } = found;
  return { voices, click: { times, period, silent: silentBeyond(source, found) } };
}

function hearBesideClicks(
  source: Source,
  clicks: TakenOff,
  noiseFloorDb: number,
  tell: WorkTold | undefined,
): Hearing {
  const clean = withoutClicks(source, clicks);
  const found = attacksOf(clean, tell);
  const remains = clicks.voices.map((voice) => clickRemains(voice, source.sampleRate));
  const isOwn = (stroke: Stroke) => !remains.some((isRemains) => isRemains(stroke));
  const strokes = padAndOthers(clean, found, isOwn);
  const heard = clicks.voices.flatMap(({ sound, times }) => {
    const levelDb = peakDb(sound);
    return times.map((time) => clickAt(time, levelDb));
  });
  const sounds = [...strokes, ...heard];
  const click: HeardClick = {
    ...clicks.click,
    levelDb: Math.max(...clicks.voices.map(({ sound }) => peakDb(sound))),
  };
  return { sounds: sounds.sort((a, b) => a.time - b.time), noiseFloorDb, click };
}

/** Every attack with its class, gaps in a row of strokes looked at again. */
function padAndOthers(
  source: Source,
  { attacks, rises }: AttacksFound,
  isOwn: (stroke: Stroke) => boolean,
): Stroke[] {
  const classed = classifySounds(source, withoutFaintest(mergeWaves(attacks.filter(isOwn))));
  const sounds = findMasked(source, classed);
  const { frameRate } = bandLayout(source.sampleRate);
  const faint = rises.filter(({ evidence }) => evidence < enoughEvidence);
  const filled = fillGaps(sounds, faint, frameRate, (rise, before) => {
    const stroke = measureStroke(source, rise, rise.frame / frameRate, before, Number.POSITIVE_INFINITY);
    return isOwn(stroke) ? stroke : null;
  });
  return withRoomError(filled, roomSound(source, filled));
}

/** The loud ones are this share. Measured: half to twice finds the same strokes in 25 rendered takes. */
const loudShare = 0.1;

/** Drops what lies too far under the take's loud strokes to be one: crackle, residue, distant sounds. */
function withoutFaintest(strokes: readonly Stroke[]): Stroke[] {
  const levels = strokes.map(({ levelDb }) => levelDb).sort((a, b) => b - a);
  const loud = levels[Math.floor(loudShare * levels.length)] ?? 0;
  return strokes.filter(({ levelDb }) => levelDb > loud - deepestDb);
}

const peakDb = (sound: Float32Array) =>
  20 * Math.log10(sound.reduce((peak, x) => Math.max(peak, Math.abs(x)), 1e-7));

function clickAt(time: number, levelDb: number): Stroke {
  const evidence = Number.MAX_VALUE;
  return { time, timeSe: 1e-5, levelDb, levelSe: 0.1, sound: 'click', evidence, timbre: null };
}
