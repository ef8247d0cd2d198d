import type { WorkTold } from '../signal/work-told.ts';
import type { LevelEvidence } from './level-evidence.ts';
import { lookAhead, type Pulse } from './look-ahead.ts';
import type { MainSlots } from './main-slots.ts';
import { openPaths, type Paths } from './paths.ts';
import { pauseSpacings, type StrayPrices } from './prices.ts';
import type { ThinStrokes } from './thin-strokes.ts';

/** What a search for the path of a take starts from. */
export interface PathQuestion {
  /** Onsets of the strokes, s, in order. */
  readonly times: Float64Array;
  readonly thin: ThinStrokes;
  readonly levels: LevelEvidence;
  readonly main: MainSlots;
  /** Expected scatter of a stroke round the local tempo, as a share of the space it has. */
  readonly scatter: number;
  readonly stray: StrayPrices;
  /** Seconds per beat found earlier for each line, or null. */
  readonly found: readonly (number | null)[];
  /** Paths followed at once. */
  readonly breadth: number;
  /** Price of a run's beginning at a slot by the phase of a click, nats; absent without one. */
  readonly phasePrice?: ((stroke: number, main: number, period: number) => number) | undefined;
  /** Whether the click has just come back after a silence when a stroke comes. */
  readonly clickIsBack?: ((stroke: number) => boolean) | undefined;
  readonly tell?: WorkTold | undefined;
}

/**
 * The most that the phase of a click can add to a path's score, nats: a beginning right on it. Half to twice aligns
 * alike.
 */
const mostPhase = 2;

/** Paths this far below the best one (nats) are given up. Measured: 10 to 40 align 120 simulated takes the same. */
export const beam = 20;
/** Strokes that may lie between two matched ones. Measured: 12 to 48 align 120 simulated takes the same. */
export const reach = 24;

/** A search under way: its question, its paths, and what all of its steps ask again and again. */
export interface Search extends PathQuestion {
  readonly paths: Paths;
  readonly strokes: number;
  /** Median interval between strokes that may be main strokes, s. */
  readonly spacing: number;
  /** The most that `phasePrice` can add, nats. */
  readonly mostPhase: number;
  /** Seconds per beat in one line when another is played at this period. */
  periodIn(line: number, from: number, period: number): number;
  /** Seconds from slot to slot as written, at the first one's seconds per beat. */
  span(from: number, to: number, period: number): number;
  /** What a stroke's level says for a slot, nats. */
  level(stroke: number, slot: number): number;
  /** The pulse at which the strokes from one on fit the slots from one on, or null where they don't. */
  pulseFrom(stroke: number, slot: number): Pulse | null;
  /** Whether a pause comes before a stroke. */
  pauseBefore(stroke: number): boolean;
}

/** Prepares a search. */
export const openSearch = (question: PathQuestion): Search => {
  const { times, thin, levels, main, found } = question;
  const known = new Map<number, Pulse | null>();
  const periodIn = (line: number, from: number, period: number): number => {
    const before = main.asked[from];
    const after = main.asked[line];
    return line === from || !before || !after ? period : (period * after) / before;
  };
  return {
    ...question,
    paths: openPaths(times.length, main.length, reach + 1),
    strokes: times.length,
    spacing: thin.spacing,
    mostPhase: question.phasePrice ? mostPhase : 0,
    periodIn,
    span: (from, to, period) => {
      const a = main.line[from]!;
      const b = main.line[to]!;
      if (a === b) return (main.beat[to]! - main.beat[from]!) * period;
      const begin = main.bars[main.lineBar[b]!]!.beginBeat;
      return (begin - main.beat[from]!) * period + (main.beat[to]! - begin) * periodIn(b, a, period);
    },
    level: (stroke, slot) => (main.accent[slot] === 1 ? levels.asAccent[stroke]! : levels.asTap[stroke]!),
    pulseFrom: (stroke, slot) => {
      const key = stroke * (main.length + 1) + main.signature[slot]!;
      const before = known.get(key);
      if (before !== undefined) return before;
      const line = main.line[slot]!;
      const guesses = [found[line], main.asked[line]].filter(
        (guess) => guess !== null && guess !== undefined,
      );
      const pulse = lookAhead(times, thin, stroke, main, slot, guesses);
      known.set(key, pulse);
      return pulse;
    },
    pauseBefore: (stroke) =>
      stroke === 0 || times[stroke]! - times[stroke - 1]! > pauseSpacings * thin.spacing,
  };
};
