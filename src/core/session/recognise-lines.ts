import { alignTake } from '../alignment/align-take.ts';
import type { Alignment } from '../alignment/alignment.ts';
import { layOut } from '../exercise/lay-out.ts';
import type { Sheet } from '../exercise/sheet.ts';
import type { Slot } from '../exercise/slot.ts';
import type { Hearing } from '../onsets/stroke.ts';
import type { Stretch } from '../signal/cut-source.ts';
import { extent } from '../stats/extent.ts';

/** A line of the sheet found in a recording. */
export interface FoundLine extends Stretch {
  readonly line: number;
  /** How often it was played in a row; a repeat left in its first half doesn't count. */
  readonly repeats: number;
  /** Tempo played. */
  readonly bpm: number;
}

/** Doubts under which a stretch is no line of the sheet. */
const foreign: readonly string[] = ['nothing-fits', 'many-unmatched', 'mostly-outside'];
/** Most slots laid out at once: a line's own strokes stay bounded however often it was played. */
const mostSlots = 6000;
/** A line found with fewer of its strokes is noodling, as a share of one repeat (our judgement). */
const leastShare = 0.75;

/** A stop this long between two repeats parts two playings of a line, s (our judgement). */
const longStop = 2;

/** The sheet's lines without rests, each as often as the strokes could have played it. */
const anyTimes = (sheet: Sheet, strokes: number): Sheet => ({
  ...sheet,
  lines: sheet.lines.map((line) => {
    const written = line.beats.flatMap((beat) => beat.partials.filter(Boolean)).length;
    const could = Math.ceil((1.1 * strokes) / written) + 1;
    const may = Math.max(1, Math.floor(mostSlots / sheet.lines.length / written));
    return { ...line, restBeats: 0, repeats: Math.min(could, may) };
  }),
});

interface Run extends Stretch {
  readonly line: number;
  readonly firstSlot: Slot;
  /** Main slots met in each repeat. */
  readonly met: ReadonlyMap<number, number>;
  /** Playing had stopped before it. */
  readonly stopped: boolean;
  readonly bpm: number;
}

/** The segments of an alignment, cut where a line ends, in order of time. */
const runsOf = (alignment: Alignment, slots: readonly Slot[], hearing: Hearing): Run[] => {
  const pads = hearing.sounds.filter(({ sound }) => sound === 'pad');
  const runs: Run[] = [];
  let before = -1;
  for (const { slot: index, stroke, segment } of alignment.matches) {
    const slot = slots[index]!;
    if (slot.grace) continue;
    const { time } = pads[stroke]!;
    const last = runs.at(-1);
    if (!last || segment !== before || last.line !== slot.line) {
      const { began, period } = alignment.segments[segment]!;
      const stopped = segment !== before && (began === 'restart' || began === 'pause');
      const met = new Map([[slot.repeat, 1]]);
      runs.push({ line: slot.line, firstSlot: slot, met, stopped, bpm: 60 / period, from: time, to: time });
    } else {
      const met = new Map(last.met).set(slot.repeat, (last.met.get(slot.repeat) ?? 0) + 1);
      runs[runs.length - 1] = { ...last, to: time, met };
    }
    before = segment;
  }
  return runs;
};

/**
 * Runs that make up one playing of a line. Another one begins where, after a repeat was played through, the line is
 * taken up from its beginning or after a long stop from that of any repeat, since equal repeats can't be told apart.
 */
const joined = (runs: readonly Run[], repeatOf: (line: number) => number): Run[][] => {
  const plays: Run[][] = [];
  for (const run of runs) {
    const play = plays.at(-1);
    const size = repeatOf(run.line);
    const done = play?.some(({ met }) => [...met.values()].some((count) => count >= leastShare * size));
    const { repeat, beat } = run.firstSlot;
    const waited = run.from - (play?.at(-1)?.to ?? 0);
    const anew = run.stopped && beat === 0 && (repeat === 0 || waited > longStop);
    if (!play || play[0]!.line !== run.line || (anew && done)) plays.push([run]);
    else play.push(run);
  }
  return plays;
};

/**
 * Which lines of the sheet were played in what was heard, in order of time; any order, repeats and left-out lines are
 * allowed for. Talk, noodling and what fits no line are left out. Lines that differ in their sticking alone sound
 * alike: see `tellAlike`.
 *
 * @example recogniseLines(sheet, hearing) // [{ line: 2, repeats: 3, bpm: 108.6, from: 1.2, to: 14.9 }]
 */
export function recogniseLines(sheet: Sheet, hearing: Hearing): FoundLine[] {
  const strokes = hearing.sounds.filter(({ sound }) => sound === 'pad');
  const open = anyTimes(sheet, strokes.length);
  const slots = layOut(open);
  const alignment = alignTake({ slots, sheet: open, strokes, click: hearing.click });
  if (alignment.doubt !== null && foreign.includes(alignment.doubt.code)) return [];
  const sizes = sheet.lines.map((_, line) => {
    const one = slots.filter((slot) => slot.line === line && slot.repeat === 0 && !slot.grace);
    return one.length;
  });
  const runs = runsOf(alignment, slots, hearing);
  return joined(runs, (line) => sizes[line]!).flatMap((play) => {
    const { line } = play[0]!;
    const size = sizes[line]!;
    const met = new Map<number, number>();
    for (const run of play)
      for (const [repeat, count] of run.met) met.set(repeat, Math.max(met.get(repeat) ?? 0, count));
    const { most } = extent(met.values());
    if (most < leastShare * size) return [];
    const repeats = [...met.values()].filter((count) => count >= size / 2).length;
    const longest = play.toSorted((a, b) => b.to - b.from - (a.to - a.from))[0]!;
    return [{ line, repeats, bpm: longest.bpm, from: play[0]!.from, to: play.at(-1)!.to }];
  });
}
