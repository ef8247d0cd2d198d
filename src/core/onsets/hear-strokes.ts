import { type FoundClicks, findClicks } from '../click/find-clicks.ts';
import { withoutClicks } from '../click/without-clicks.ts';
import { bandLayout } from '../signal/band-layout.ts';
import { pickup } from '../signal/pickup.ts';
import type { Source } from '../signal/source.ts';
import { atUsualGain } from '../signal/usual-gain.ts';
import { withoutSteadyLevel } from '../signal/without-steady-level.ts';
import { partOfWork, type WorkTold } from '../signal/work-told.ts';
import { clickRemains } from './click-remains.ts';
import { fillGaps } from './fill-gaps.ts';
import { findMasked } from './masked-strokes.ts';
import { measureStroke } from './measure-stroke.ts';
import { mergeWaves } from './merge-waves.ts';
import { type RisesFound, riseCandidates } from './rise-candidates.ts';
import { withRoomError } from './room-error.ts';
import { roomSound } from './room-sound.ts';
import { classifySounds } from './sound-classes.ts';
import type { HeardClick, Hearing, Stroke } from './stroke.ts';

/** Evidence that makes a rise a stroke, nats. Noise reaches 10 in an hour; measured on rendered takes. */
const enoughEvidence = 12;
/** Sooner than this after a stroke, a rise is the stroke's own second wave or an echo off a nearby surface, s … */
const echoSeconds = 0.02;
/** … unless it is as good a stroke as the one before. */
const strokeInEcho = { evidence: 60, belowDb: 3 };
/** The room's first answers swell and beat for so long after a stroke, s; a stroke among them rises clearly, nats. */
const roomSeconds = 0.05;
const strokeInRoom = 22;
/** This far under the stroke before it, it is more likely what a room or a codec makes of that one, dB, unless evident. */
const farUnder = { levelDb: 28, evidence: 50 };
/** Nothing so near the recording's ends can be told from the cut, s. */
const edgeSeconds = 0.012;
/** Nothing is struck twice within this, s. */
const deadSeconds = 0.008;
/** A take's softest strokes lie at most this far under its loud ones, dB: taps 34 under accents, and their scatter. */
const deepestDb = 46;

/** About how much of the work is the first hearing where a second follows, the search for rises in a hearing. */
const shareOfFirst = 0.5;
const shareOfRises = 0.6;
const toldEvery = 64;

/**
 * Finds the strokes of a recording, their times and levels, and the clicks of a metronome, in order of time. Uses
 * nothing but the sound: neither exercise nor tempo. Linear in length. `tell` hears how far it has come.
 */
export function hearStrokes(recording: Source, tell?: WorkTold): Hearing {
  const { source, gainDb } = atUsualGain(withoutSteadyLevel(pickup(recording)));
  const { sounds, noiseFloorDb, click } = hearAtUsualGain(source, tell);
  tell?.('listening', 1);
  return {
    sounds: sounds.map((sound) => ({ ...sound, levelDb: sound.levelDb - gainDb })),
    noiseFloorDb: noiseFloorDb - gainDb,
    click: click && { ...click, levelDb: click.levelDb - gainDb },
  };
}

function hearAtUsualGain(source: Source, tell: WorkTold | undefined): Hearing {
  const { clicks, noiseFloorDb, strokes } = hearOnce(source, partOfWork(tell, 0, shareOfFirst));
  return clicks === null
    ? { sounds: strokes, noiseFloorDb, click: null }
    : hearBesideClicks(source, clicks, noiseFloorDb, partOfWork(tell, shareOfFirst, 1));
}

/** The clicks of a recording, or where there are none its strokes. What else the search found ends here: it is large. */
function hearOnce(
  source: Source,
  tell: WorkTold | undefined,
): {
  readonly clicks: FoundClicks | null;
  readonly noiseFloorDb: number;
  readonly strokes: Stroke[];
} {
  const found = riseCandidates(source, partOfWork(tell, 0, shareOfRises));
  const noiseFloorDb = 10 * Math.log10(2 * found.floorPower);
  const attacks = strokesAmong(source, found, partOfWork(tell, shareOfRises, 1));
  const clicks = findClicks(source, attacks);
  const strokes = clicks === null ? padAndOthers(source, attacks, found, () => true) : [];
  return { clicks, noiseFloorDb, strokes };
}

function hearBesideClicks(
  source: Source,
  clicks: FoundClicks,
  noiseFloorDb: number,
  tell: WorkTold | undefined,
): Hearing {
  const clean = withoutClicks(source, clicks);
  const rises = riseCandidates(clean, partOfWork(tell, 0, shareOfRises));
  const remains = clicks.voices.map((voice) => clickRemains(voice, source.sampleRate));
  const isOwn = (stroke: Stroke) => !remains.some((isRemains) => isRemains(stroke));
  const strokes = padAndOthers(
    clean,
    strokesAmong(clean, rises, partOfWork(tell, shareOfRises, 1)),
    rises,
    isOwn,
  );
  const heard = clicks.voices.flatMap(({ sound, times }) => {
    const levelDb = peakDb(sound);
    return times.map((time) => clickAt(time, levelDb));
  });
  const sounds = [...strokes, ...heard];
  const click: HeardClick = {
    times: clicks.times,
    period: clicks.grid.period,
    levelDb: Math.max(...clicks.voices.map(({ sound }) => peakDb(sound))),
  };
  return { sounds: sounds.sort((a, b) => a.time - b.time), noiseFloorDb, click };
}

/** Every attack with its class, gaps in a row of strokes looked at again. */
function padAndOthers(
  source: Source,
  attacks: readonly Stroke[],
  { rises }: RisesFound,
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

/** The rises that are attacks of their own, measured, in order of time; none has a class yet but `pad`. */
export function strokesAmong(source: Source, { rises }: RisesFound, tell?: WorkTold): Stroke[] {
  const { frameRate } = bandLayout(source.sampleRate);
  const sounds: Stroke[] = [];
  const wanted = rises.filter(({ evidence }) => evidence >= enoughEvidence);
  const end = source.length / source.sampleRate;
  wanted.forEach((rise, i) => {
    if (i % toldEvery === 0) tell?.('listening', i / wanted.length);
    const previous = sounds.at(-1);
    const alone = (wanted[i + 1]?.frame ?? Number.POSITIVE_INFINITY) - rise.frame;
    const before = previous?.time ?? Number.NEGATIVE_INFINITY;
    const stroke = measureStroke(source, rise, rise.frame / frameRate, before, alone);
    // A recording that begins or ends in the middle of a sound is cut there, not struck.
    if (stroke.time < edgeSeconds || stroke.time > end - edgeSeconds) return;
    const since = stroke.time - before;
    if (since < deadSeconds) return;
    if (previous && since < echoSeconds) {
      const { evidence, belowDb } = strokeInEcho;
      if (stroke.evidence < evidence || stroke.levelDb < previous.levelDb - belowDb) return;
    }
    const under = previous !== undefined && stroke.levelDb < previous.levelDb - farUnder.levelDb;
    if (since < roomSeconds && stroke.evidence < (under ? farUnder.evidence : strokeInRoom)) return;
    sounds.push(stroke);
  });
  return sounds;
}

/** Drops what lies too far under the take's loud strokes to be one: crackle, residue, distant sounds. */
function withoutFaintest(strokes: readonly Stroke[]): Stroke[] {
  const levels = strokes.map(({ levelDb }) => levelDb).sort((a, b) => b - a);
  const loud = levels[Math.floor(levels.length / 10)] ?? 0;
  return strokes.filter(({ levelDb }) => levelDb > loud - deepestDb);
}

const peakDb = (sound: Float32Array) =>
  20 * Math.log10(sound.reduce((peak, x) => Math.max(peak, Math.abs(x)), 1e-7));

function clickAt(time: number, levelDb: number): Stroke {
  const evidence = Number.MAX_VALUE;
  return { time, timeSe: 1e-5, levelDb, levelSe: 0.1, sound: 'click', evidence, timbre: null };
}
