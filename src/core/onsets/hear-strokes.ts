import { bandLayout } from '../signal/band-layout.ts';
import { pickup } from '../signal/pickup.ts';
import type { Source } from '../signal/source.ts';
import { measureStroke } from './measure-stroke.ts';
import { riseCandidates } from './rise-candidates.ts';
import type { Hearing, Stroke } from './stroke.ts';

/** Evidence that makes a rise a stroke, nats. Noise reaches 10 in an hour; measured on rendered takes. */
const enoughEvidence = 12;
/** Sooner than this after a stroke, a rise is the stroke's own second wave or an echo off a nearby surface, s … */
const echoSeconds = 0.02;
/** … unless it is as good a stroke as the one before. */
const strokeInEcho = { evidence: 60, belowDb: 3 };
/** Nothing is struck twice within this, s. */
const deadSeconds = 0.008;

/**
 * Finds the strokes of a recording, their times and levels, in order of time. Uses nothing but the sound: neither
 * exercise nor tempo. Linear in length.
 */
export function hearStrokes(recording: Source): Hearing {
  const source = pickup(recording);
  const { rises, floorPower } = riseCandidates(source);
  const { frameRate } = bandLayout(source.sampleRate);
  const sounds: Stroke[] = [];
  for (const rise of rises) {
    if (rise.evidence < enoughEvidence) continue;
    const previous = sounds.at(-1);
    const stroke = measureStroke(
      source,
      rise,
      rise.frame / frameRate,
      previous?.time ?? Number.NEGATIVE_INFINITY,
    );
    const since = stroke.time - (previous?.time ?? Number.NEGATIVE_INFINITY);
    if (since < deadSeconds) continue;
    if (previous && since < echoSeconds) {
      const { evidence, belowDb } = strokeInEcho;
      if (stroke.evidence < evidence || stroke.levelDb < previous.levelDb - belowDb) continue;
    }
    sounds.push(stroke);
  }
  return { sounds, noiseFloorDb: 10 * Math.log10(2 * floorPower), click: null };
}
