import type { Hearing, Stroke } from './stroke.ts';

/** A note that an electronic pad sent. */
export interface PadNote {
  /** s from the start of the file. */
  readonly time: number;
  /** 1 … 127 */
  readonly velocity: number;
  /** Which part of the pad sent it, 0 … 127. */
  readonly key: number;
  /** How far apart in time the file can tell notes around here, s. */
  readonly step: number;
}

/** Head and rim of a pad may both answer to one stroke; within this time the softer is the same stroke, s. Our judgement. */
const sameStrokeSeconds = 0.003;
/** A uniform step's standard deviation in steps: 1/√12. */
const stepSd = 1 / Math.sqrt(12);

/**
 * Decibels under the hardest stroke that a velocity stands for: 40·lg(velocity/127), the square law that the
 * Downloadable Sounds specification (DLS level 1) gives for the gain of a note, quoted from memory. Devices differ in how they turn a
 * stroke into a velocity, so that these decibels compare within one device and setting only, and never with dBFS.
 *
 * @example velocityDb(64) // −11.905
 */
export function velocityDb(velocity: number): number {
  return 40 * Math.log10(velocity / 127);
}

/**
 * What an electronic pad sent, as a hearing: a note is a stroke, its time and level as exact as the file's steps allow;
 * notes of two keys within 3 ms are one stroke, as loud as the louder. A pad hears neither a room nor a click.
 */
export function noteHearing(notes: readonly PadNote[]): Hearing {
  const sounds = strokesOf(notes).map(
    ({ time, velocity, step }): Stroke => ({
      time,
      timeSe: step * stepSd,
      levelDb: velocityDb(velocity),
      levelSe: ((40 / Math.LN10) * stepSd) / velocity,
      sound: 'pad',
      evidence: Number.MAX_VALUE,
      timbre: null,
    }),
  );
  return { sounds, noiseFloorDb: velocityDb(1), click: null };
}

function strokesOf(notes: readonly PadNote[]): PadNote[] {
  const strokes: PadNote[] = [];
  for (const note of notes.toSorted((a, b) => a.time - b.time)) {
    const last = strokes.at(-1);
    const same = last !== undefined && last.key !== note.key && note.time - last.time <= sameStrokeSeconds;
    if (!same) strokes.push(note);
    else if (note.velocity > last.velocity) strokes[strokes.length - 1] = { ...note, time: last.time };
  }
  return strokes;
}
