import { soundLead } from '../click/click-seed.ts';
import { type ClickVoice, findClicks } from '../click/find-clicks.ts';
import { withoutClicks } from '../click/without-clicks.ts';
import { bandLayout } from '../signal/band-layout.ts';
import { pickup } from '../signal/pickup.ts';
import type { Source } from '../signal/source.ts';
import { measureStroke } from './measure-stroke.ts';
import { type RisesFound, riseCandidates } from './rise-candidates.ts';
import { classifySounds } from './sound-classes.ts';
import type { HeardClick, Hearing, Stroke } from './stroke.ts';
import { levelSeconds } from './stroke-level.ts';

/** Evidence that makes a rise a stroke, nats. Noise reaches 10 in an hour; measured on rendered takes. */
const enoughEvidence = 12;
/** Sooner than this after a stroke, a rise is the stroke's own second wave or an echo off a nearby surface, s … */
const echoSeconds = 0.02;
/** … unless it is as good a stroke as the one before. */
const strokeInEcho = { evidence: 60, belowDb: 3 };
/** Nothing is struck twice within this, s. */
const deadSeconds = 0.008;
/** Where a click was taken off, what is less than the click's own sound there by so many dB is what is left of it. */
const remainsDb = { often: 26, seams: 20, seldom: 14, oftenFrom: 4 };
const seamSeconds = 0.04;
/** A take's softest strokes lie at most this far under its loud ones, dB: taps 34 under accents, and their scatter. */
const deepestDb = 46;

/**
 * Finds the strokes of a recording, their times and levels, and the clicks of a metronome, in order of time. Uses
 * nothing but the sound: neither exercise nor tempo. Linear in length.
 */
export function hearStrokes(recording: Source): Hearing {
  const source = pickup(recording);
  const found = riseCandidates(source);
  const attacks = strokesAmong(source, found);
  const clicks = findClicks(source, attacks);
  const noiseFloorDb = 10 * Math.log10(2 * found.floorPower);
  if (clicks === null)
    return { sounds: classifySounds(source, withoutFaintest(attacks)), noiseFloorDb, click: null };

  const clean = withoutClicks(source, clicks);
  const remains = clicks.voices.map((voice) => clickRemains(voice, source.sampleRate));
  const strokes = strokesAmong(clean, riseCandidates(clean)).filter(
    (stroke) => !remains.some((isRemains) => isRemains(stroke)),
  );
  const heard = clicks.voices.flatMap(({ sound, times }) =>
    times.map((time) => clickAt(time, peakDb(sound))),
  );
  const sounds = [...classifySounds(clean, withoutFaintest(strokes)), ...heard];
  const click: HeardClick = {
    times: clicks.times,
    period: clicks.grid.period,
    levelDb: Math.max(...clicks.voices.map(({ sound }) => peakDb(sound))),
  };
  return { sounds: sounds.sort((a, b) => a.time - b.time), noiseFloorDb, click };
}

export function strokesAmong(source: Source, { rises }: RisesFound): Stroke[] {
  const { frameRate } = bandLayout(source.sampleRate);
  const sounds: Stroke[] = [];
  const wanted = rises.filter(({ evidence }) => evidence >= enoughEvidence);
  wanted.forEach((rise, i) => {
    const previous = sounds.at(-1);
    const alone = (wanted[i + 1]?.frame ?? Number.POSITIVE_INFINITY) - rise.frame;
    const before = previous?.time ?? Number.NEGATIVE_INFINITY;
    const stroke = measureStroke(source, rise, rise.frame / frameRate, before, alone);
    const since = stroke.time - before;
    if (since < deadSeconds) return;
    if (previous && since < echoSeconds) {
      const { evidence, belowDb } = strokeInEcho;
      if (stroke.evidence < evidence || stroke.levelDb < previous.levelDb - belowDb) return;
    }
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

/**
 * Tells the remains of a subtracted click from strokes: they lie in its sound and well under it. Where the click was
 * never heard alone, its sound has seams, and remains may lie as far from it as the strokes that were in the way.
 */
function clickRemains(
  { sound, times, learnedFrom, heardAlone }: ClickVoice,
  rate: number,
): (stroke: Stroke) => boolean {
  const often = learnedFrom >= remainsDb.oftenFrom;
  const under = often ? (heardAlone ? remainsDb.often : remainsDb.seams) : remainsDb.seldom;
  const window = Math.round(levelSeconds * rate);
  const back = heardAlone ? 0 : Math.round(seamSeconds * rate);
  const power = new Float64Array(sound.length + 1);
  for (let i = 0; i < sound.length; i++) power[i + 1] = power[i]! + sound[i]! ** 2;
  return ({ time, levelDb }) => {
    const before = times.findLast((click) => click - soundLead < time + levelSeconds);
    if (before === undefined) return false;
    const from = Math.round((time - before + soundLead) * rate);
    if (from >= sound.length + back) return false;
    const energy = power[Math.min(sound.length, from + window)]! - power[Math.max(0, from - back)]!;
    return levelDb < 10 * Math.log10((2 * energy) / window + 1e-14) - under;
  };
}

const peakDb = (sound: Float32Array) =>
  20 * Math.log10(sound.reduce((peak, x) => Math.max(peak, Math.abs(x)), 1e-7));

function clickAt(time: number, levelDb: number): Stroke {
  const evidence = Number.MAX_VALUE;
  return { time, timeSe: 1e-5, levelDb, levelSe: 0.1, sound: 'click', evidence, timbre: null };
}
