import type { Stroke } from '../onsets/stroke.ts';
import { type SampleSummary, summaryOf } from '../stats/mean-difference.ts';

/** Eight strokes of each hand at one height before a take: their number, mean level and scatter, dBFS and dB. */
export interface SetUpReference {
  readonly right: SampleSummary;
  readonly left: SampleSummary;
}

/** Strokes asked for a hand, and how many more or fewer still do. Our judgement. */
const asked = 8;
const give = 2;
/** Strokes at one height scatter by one or two dB; beyond this they weren't at one height, dB. Our judgement. */
const mostSpreadDb = 4;

export type HandHeard =
  | { readonly state: 'heard'; readonly levels: SampleSummary }
  | { readonly state: 'too-few' | 'too-many'; readonly strokes: number }
  | { readonly state: 'uneven'; readonly strokes: number; readonly spreadDb: number };

/**
 * One hand's strokes for the reference, from all that was heard while it played them.
 *
 * @example handForReference([]) // { state: 'too-few', strokes: 0 }
 */
export function handForReference(sounds: readonly Stroke[]): HandHeard {
  const levelsDb = sounds.filter(({ sound }) => sound === 'pad').map(({ levelDb }) => levelDb);
  const strokes = levelsDb.length;
  if (strokes < asked - give) return { state: 'too-few', strokes };
  if (strokes > asked + give) return { state: 'too-many', strokes };
  const levels = summaryOf(levelsDb);
  if (levels.sd > mostSpreadDb) return { state: 'uneven', strokes, spreadDb: levels.sd };
  return { state: 'heard', levels };
}
