import type { Source } from '../signal/source.ts';
import { measureStroke } from './measure-stroke.ts';
import type { RiseCandidate } from './rise-candidate.ts';
import type { Stroke } from './stroke.ts';

/** Evidence that makes a rise a stroke, nats. Noise reaches 10 in an hour; measured on rendered takes. */
export const enoughEvidence = 12;
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

/** Measures rises with enough evidence, one after the other; null for one that is no attack of its own. */
type AttackChain = (source: Source, rise: RiseCandidate, framesAlone: number) => Stroke | null;

/**
 * Begins a chain of attacks: each call measures the attack at the next rise, `framesAlone` frames before the one after it,
 * or says that it is none of its own. It has no class yet but `pad`. Reads the sound round the rise and nothing else.
 */
export function attackChain(frameRate: number): AttackChain {
  let previous: Stroke | null = null;
  return (source, rise, framesAlone) => {
    const before = previous?.time ?? Number.NEGATIVE_INFINITY;
    const stroke = measureStroke(source, rise, rise.frame / frameRate, before, framesAlone);
    // A recording that begins or ends in the middle of a sound is cut there, not struck.
    if (stroke.time < edgeSeconds || stroke.time > source.length / source.sampleRate - edgeSeconds)
      return null;
    const since = stroke.time - before;
    if (since < deadSeconds) return null;
    if (previous && since < echoSeconds) {
      const { evidence, belowDb } = strokeInEcho;
      if (stroke.evidence < evidence || stroke.levelDb < previous.levelDb - belowDb) return null;
    }
    const under = previous !== null && stroke.levelDb < previous.levelDb - farUnder.levelDb;
    if (since < roomSeconds && stroke.evidence < (under ? farUnder.evidence : strokeInRoom)) return null;
    previous = stroke;
    return stroke;
  };
}
