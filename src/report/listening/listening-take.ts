import type { TakeResult } from '../../core/result/take-result.ts';
import { evenBeats } from './even-beats.ts';

/** What the listening part of a report knows of a take. */
export interface ListeningTake {
  /** s */
  readonly duration: number;
  /** Columns, in order of time. */
  readonly strokes: {
    /** s */
    readonly time: readonly number[];
    /** What brings the stroke to its even place, ms. */
    readonly moveMs: readonly number[];
    readonly tap: readonly boolean[];
    readonly levelDb: readonly number[];
  };
  /** Columns, in order of time. */
  readonly beats: {
    /** s, where the beat evenly begins and ends. */
    readonly from: readonly number[];
    readonly to: readonly number[];
    readonly beginsBar: readonly boolean[];
    /** Number of the time through a line that the beat belongs to. */
    readonly go: readonly number[];
  };
  /** Name of each time through a line: 'line 1, time 2'. */
  readonly goes: readonly string[];
}

/** Farther than this from a stroke whose move is known, nothing is moved, s. */
const reach = 0.5;

/** The take as its listening part needs it: strokes with the way to their even places, and the even beats. */
export function listeningTake(result: TakeResult): ListeningTake {
  const { strokes, slots, recording } = result;
  const order = strokes.time.map((_, i) => i).sort((a, b) => strokes.time[a]! - strokes.time[b]!);
  const time = order.map((i) => strokes.time[i]!);
  const known = order.map((i) => {
    const deviation = strokes.role[i] === 'matched' ? (strokes.deviationMs[i] ?? null) : null;
    return deviation === null ? null : 0 - deviation;
  });
  const { beats, goes } = evenBeats(result);
  return {
    duration: recording.duration,
    strokes: {
      time,
      moveMs: allMoves(time, known),
      tap: order.map((i) => {
        const slot = strokes.slot[i] ?? null;
        return strokes.role[i] === 'matched' && slot !== null && !slots.accent[slot];
      }),
      levelDb: order.map((i) => strokes.levelDb[i]!),
    },
    beats: {
      from: beats.map((beat) => beat.from),
      to: beats.map((beat) => beat.to),
      beginsBar: beats.map((beat) => beat.beginsBar),
      go: beats.map((beat) => beat.go),
    },
    goes,
  };
}

/** A stroke without a place of its own goes along with its neighbours. */
function allMoves(time: readonly number[], known: readonly (number | null)[]): number[] {
  const moves: number[] = [];
  let before = -1;
  let after = 0;
  for (let i = 0; i < time.length; i++) {
    if (known[i] !== null) {
      before = i;
      moves.push(known[i]!);
      continue;
    }
    after = Math.max(after, i + 1);
    while (after < time.length && known[after] === null) after++;
    const near = (other: number) => other in known && Math.abs(time[other]! - time[i]!) <= reach;
    const [left, right] = [near(before) ? known[before]! : null, near(after) ? known[after]! : null];
    if (left === null || right === null) {
      moves.push(left ?? right ?? 0);
      continue;
    }
    const share = (time[i]! - time[before]!) / (time[after]! - time[before]!);
    moves.push(left + share * (right - left));
  }
  return moves;
}
