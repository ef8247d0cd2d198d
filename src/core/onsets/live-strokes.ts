import type { Source } from '../signal/source.ts';
import { type Listening, startListening } from './listening.ts';
import { deepestDb } from './settle-hearing.ts';
import type { Stroke } from './stroke.ts';

/** A stroke heard just now, for showing and following while one plays; grading hears the whole and better. */
export interface LiveStroke {
  /** s from the recording's first sample. */
  readonly time: number;
  /** dBFS, as `Stroke.levelDb`. */
  readonly levelDb: number;
  /**
   * Share of such sounds that the end of the take found to be strokes or clicks, in rendered takes (reports/live.md): 0 … 1.
   */
  readonly confidence: number;
}

/** What is heard of a recording while it comes. */
export interface LiveHeard {
  readonly strokes: readonly LiveStroke[];
  /** s: strokes before this are told by now, but for what the end of the take finds by looking again. */
  readonly heardSeconds: number;
}

/** Attacks that tell how loud the take is. */
const loudestOf = 200;

/** By how long a stroke is told after it was struck, without the time that blocks take: what must be heard of it, s. */
export const liveDelaySeconds = 0.12;

/** Strokes of a take while it comes. */
interface LiveStrokes {
  /** Goes on with a recording that is the same as before and longer. A metronome from a loudspeaker counts, too. */
  goOn(recording: Source): LiveHeard;
  /** The same listening, for the end of the take. */
  readonly listening: Listening;
}

/**
 * Begins to tell the strokes of a recording of one channel while it comes: the attacks that the search for strokes has
 * decided on, without those too faint to be strokes.
 *
 * @example liveStrokes().goOn(source).strokes[0] // { time: 1.003, levelDb: -18.2, confidence: 0.99 }
 */
export function liveStrokes(): LiveStrokes {
  const listening = startListening();
  const levels: number[] = [];
  return {
    listening,
    goOn(recording) {
      const strokes = listening.goOn(recording).flatMap((attack) => {
        levels.push(attack.levelDb);
        if (levels.length > loudestOf) levels.shift();
        const loud = levels.toSorted((a, b) => b - a)[Math.floor(levels.length / 10)]!;
        return attack.levelDb > loud - deepestDb ? [liveStroke(attack)] : [];
      });
      const there = recording.length / recording.sampleRate;
      return { strokes, heardSeconds: Math.max(0, there - liveDelaySeconds) };
    },
  };
}

const liveStroke = ({ time, levelDb, evidence }: Stroke): LiveStroke => ({
  time,
  levelDb,
  confidence: confidenceOf(evidence),
});

/** Log-odds of a confidence, a line over the logarithm of the evidence up to the most; fitted to the table in reports/live.md. */
const odds = { at12: -1.5, perFold: 2.05, most: 4.7 };

function confidenceOf(evidence: number): number {
  return 1 / (1 + Math.exp(-Math.min(odds.most, odds.at12 + odds.perFold * Math.log(evidence / 12))));
}
