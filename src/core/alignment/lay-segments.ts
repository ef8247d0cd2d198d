import type { Slot } from '../exercise/slot.ts';
import type { Began, Match, Segment } from './alignment.ts';
import { fitRun } from './fit-run.ts';
import type { Piece } from './grade-runs.ts';
import type { MainSlots } from './main-slots.ts';
import type { OtherStrokes } from './other-strokes.ts';
import type { Run } from './runs.ts';

interface LaidSegments {
  readonly segments: readonly Segment[];
  /** Strokes by their index among those searched, in order of time. */
  readonly matches: readonly Match[];
  /** Slots of graded segments without a stroke, in order. */
  readonly missed: readonly number[];
}

/** Seconds per beat of a segment too short to tell: the one asked, or that of the run's own strokes. */
const fallbackPeriod = (main: MainSlots, piece: Piece, run: Run, times: Float64Array): number => {
  const [a, b] = [run.steps[0]!, run.steps.at(-1)!];
  const beats = main.beat[b.main]! - main.beat[a.main]!;
  return (
    main.asked[main.line[piece.first]!] ?? (beats > 0 ? (times[b.stroke]! - times[a.stroke]!) / beats : 0.5)
  );
};

const beganBy = {
  begin: 'restart',
  next: 'on',
  slip: 'slip',
  pause: 'pause',
  jump: 'jump',
  surplus: 'repeat',
  'caught-up': 'on',
} as const;

/** How a piece began: its run's first one as the run did, a later one in the middle of playing. */
const beganAs = (pieces: readonly Piece[], index: number, runs: readonly Run[]): Began => {
  const { run } = pieces[index]!;
  if (index === 0) return 'start';
  return pieces[index - 1]!.run === run ? 'on' : beganBy[runs[run]!.kind];
};

/** Turns the pieces of runs into segments with their matches, grace notes included, and their missed slots. */
export const laySegments = (question: {
  readonly pieces: readonly Piece[];
  readonly runs: readonly Run[];
  /** For each run a stroke or −1 on each of its main slots. */
  readonly settled: readonly Int32Array[];
  readonly others: OtherStrokes;
  readonly main: MainSlots;
  readonly slots: readonly Slot[];
  readonly times: Float64Array;
}): LaidSegments => {
  const { pieces, runs, settled, others, main, slots, times } = question;
  const matches: Match[] = [];
  const missed: number[] = [];
  const segments = pieces.map((piece, segment): Segment => {
    const run = runs[piece.run]!;
    const firstSlot = main.slot[piece.first]! - main.graces[piece.first]!;
    const zero = slots[firstSlot]!.beatTime - slots[firstSlot]!.position;
    const onTimes: number[] = [];
    const onBeats: number[] = [];
    const lay = (slot: number, stroke: number | undefined): void => {
      if (stroke !== undefined) matches.push({ slot, stroke, segment });
      else if (piece.state === 'graded') missed.push(slot);
    };
    for (let s = piece.first; s <= piece.last; s++) {
      const stroke = settled[piece.run]![s - run.first]!;
      const slot = main.slot[s]!;
      const written = main.graces[s]!;
      const graces = others.gracesOf.get(stroke) ?? [];
      for (let g = 0; g < written; g++) lay(slot - written + g, graces[g - (written - graces.length)]);
      lay(slot, stroke >= 0 ? stroke : undefined);
      if (stroke >= 0) {
        onTimes.push(times[stroke]!);
        onBeats.push(main.beat[s]! - zero);
      }
    }
    const fit = fitRun(onTimes, onBeats);
    const period = fit?.period ?? fallbackPeriod(main, piece, run, times);
    const origin = fit?.origin ?? (onTimes[0] ?? times[run.steps[0]!.stroke]!) - period * (onBeats[0] ?? 0);
    return {
      firstSlot,
      lastSlot: main.slot[piece.last]!,
      state: piece.state,
      began: beganAs(pieces, segment, runs),
      leadSwapped: false,
      origin,
      period,
    };
  });
  return {
    segments,
    matches: matches.sort((a, b) => a.stroke - b.stroke),
    missed: missed.sort((a, b) => a - b),
  };
};
