import type { Sheet } from '../exercise/sheet.ts';
import type { Slot } from '../exercise/slot.ts';
import type { HeardClick, Stroke } from '../onsets/stroke.ts';
import type { Alignment, Match, ReferenceKind, Segment } from './alignment.ts';
import { clickFits, clickPhase } from './click-phase.ts';
import { doubtOf } from './doubt.ts';
import { findPath, type PathStep } from './find-path.ts';
import { fitRun } from './fit-run.ts';
import { gradeRuns } from './grade-runs.ts';
import { findLevels, type LevelModel, levelEvidence } from './level-evidence.ts';
import { type MainSlots, mainSlots } from './main-slots.ts';
import { median } from './median.ts';
import { otherStrokes } from './other-strokes.ts';
import { cutRuns } from './runs.ts';
import { settleRun } from './settle-run.ts';
import { type ThinStrokes, thinStrokes } from './thin-strokes.ts';

/** A take to be laid on its exercise. */
export interface AlignQuestion {
  readonly slots: readonly Slot[];
  readonly sheet: Sheet;
  /** All sounds found, in order of time; only those of class `pad` are laid on slots. */
  readonly strokes: readonly Stroke[];
  readonly click: HeardClick | null;
}

/** Paths followed at once: few while levels and tempo are looked for, then more, and more with more bars. */
const breadth = { first: 32, second: 32, mostBars: 128 };
/** Scatter first assumed and the bounds of what is believed afterwards, as shares of a slot's space. */
const scatter = { first: 0.07, least: 0.025, most: 0.13 };

/** Levels of strokes in even company: what stands alone or in a heap is talk rather than playing. */
const evenLevels = (times: Float64Array, levels: Float64Array, { kept }: ThinStrokes): number[] => {
  const even: number[] = [];
  for (let i = 1; i + 1 < kept.length; i++) {
    const before = times[kept[i]!]! - times[kept[i - 1]!]!;
    const after = times[kept[i + 1]!]! - times[kept[i]!]!;
    if (Math.abs(Math.log(after / before)) < 0.35) even.push(levels[kept[i]!]!);
  }
  return even.length >= 12 ? even : [...levels];
};

/** Levels by what the first search took each stroke for; falls back on the first guess. */
const levelsOnPath = (path: readonly PathStep[], main: MainSlots, levels: Float64Array, share: number) => {
  const accents = path.filter((step) => main.accent[step.main] === 1).map((step) => levels[step.stroke]!);
  const taps = path.filter((step) => main.accent[step.main] === 0).map((step) => levels[step.stroke]!);
  if (accents.length < 4 || taps.length < 4) return null;
  const [accentDb, tapDb] = [median(accents), median(taps)];
  const spread = (values: readonly number[], middle: number): number =>
    Math.min(6, Math.max(1, 1.4826 * median(values.map((value) => Math.abs(value - middle)))));
  const model: LevelModel = {
    accentDb,
    tapDb,
    accentSpreadDb: spread(accents, accentDb),
    tapSpreadDb: spread(taps, tapDb),
    accentShare: share,
  };
  return accentDb - tapDb > Math.max(model.accentSpreadDb, model.tapSpreadDb) ? model : null;
};

/** Seconds per beat of each line, as the first search found it; null where it found too little. */
const temposOnPath = (path: readonly PathStep[], main: MainSlots, times: Float64Array): (number | null)[] =>
  main.asked.map((_, line) => {
    const ratios: number[] = [];
    for (let i = 1; i < path.length; i++) {
      const [a, b] = [path[i - 1]!, path[i]!];
      if (b.kind !== 'next' || main.line[a.main] !== line || main.line[b.main] !== line) continue;
      ratios.push((times[b.stroke]! - times[a.stroke]!) / (main.beat[b.main]! - main.beat[a.main]!));
    }
    return ratios.length >= 8 ? median(ratios) : null;
  });

/** Robust scatter of strokes in the first search, from the bend of each three in a row. */
const scatterOnPath = (path: readonly PathStep[], main: MainSlots, times: Float64Array): number => {
  const bends: number[] = [];
  for (let i = 2; i < path.length; i++) {
    const [a, b, c] = [path[i - 2]!, path[i - 1]!, path[i]!];
    if (b.kind !== 'next' || c.kind !== 'next' || main.line[a.main] !== main.line[c.main]) continue;
    const step = main.beat[c.main]! - main.beat[a.main]!;
    const period = (times[c.stroke]! - times[a.stroke]!) / step;
    const due = times[a.stroke]! + (main.beat[b.main]! - main.beat[a.main]!) * period;
    bends.push(Math.abs(times[b.stroke]! - due) / (main.room[b.main]! * period));
  }
  if (bends.length < 8) return scatter.first;
  const spread = (1.4826 * median(bends)) / Math.sqrt(1.5);
  return Math.min(scatter.most, Math.max(scatter.least, 1.3 * spread));
};

const noSegments = (strokes: readonly number[], code: string, reference: ReferenceKind): Alignment => ({
  reference,
  segments: [],
  matches: [],
  missed: [],
  extra: [],
  doubled: [],
  outside: strokes,
  doubt: { code, facts: { strokes: strokes.length } },
});

/**
 * Lays the strokes of a take on the slots of its exercise and says which were played, missed, extra, doubled
 * or outside, in runs that begin anew at every stop, slip, jump or restart. Never throws; an empty or foreign
 * take comes back with a doubt.
 *
 * @example alignTake({ slots, sheet, strokes, click: null }).matches.length // → strokes that found a slot
 */
export const alignTake = ({ slots, sheet, strokes, click }: AlignQuestion): Alignment => {
  const main = mainSlots(slots, sheet);
  const pads = strokes.flatMap((stroke, i) => (stroke.sound === 'pad' ? [i] : []));
  const open = main.asked.some((asked) => asked === null);
  const unclicked: ReferenceKind = open ? 'fitted-tempo' : 'asked-tempo';
  if (main.length === 0) return noSegments(pads, 'no-slots', unclicked);
  if (pads.length < 2) return noSegments(pads, 'no-strokes', unclicked);

  const times = Float64Array.from(pads, (i) => strokes[i]!.time);
  const levels = Float64Array.from(pads, (i) => strokes[i]!.levelDb);
  const thin = thinStrokes(times, levels, main);
  const accentShare = main.accent.reduce((sum, accent) => sum + accent, 0) / main.length;
  const firstLevels = findLevels(evenLevels(times, levels, thin), accentShare);
  let evidence = levelEvidence([...levels], firstLevels);
  const phasePrice = click === null ? undefined : clickPhase(click, main, times);
  const question = { times, thin, main, phasePrice };
  const first = findPath({
    ...question,
    breadth: breadth.second + Math.min(breadth.mostBars, main.bars.length),
    levels: evidence,
    scatter: scatter.first,
    found: main.asked.map(() => null),
  });
  if (first.length === 0) return noSegments(pads, 'nothing-fits', unclicked);
  const foundLevels = levelsOnPath(first, main, levels, accentShare) ?? firstLevels;
  evidence = levelEvidence([...levels], foundLevels);
  const width = scatterOnPath(first, main, times);
  const path = findPath({
    ...question,
    breadth: breadth.second + Math.min(breadth.mostBars, main.bars.length),
    levels: evidence,
    scatter: width,
    found: temposOnPath(first, main, times),
  });

  const runs = cutRuns(path, main);
  const settled = runs.map((run, r) => {
    const before = runs[r - 1]?.steps.at(-1)?.stroke ?? -1;
    const after = runs[r + 1]?.steps[0]?.stroke ?? times.length;
    return settleRun({ run, main, times, levels: evidence, scatter: width, from: before + 1, to: after });
  });
  const pieces = gradeRuns(runs, main);
  const roles = otherStrokes({ runs, settled, main, times });

  const segments: Segment[] = [];
  const matches: Match[] = [];
  const missed: number[] = [];
  for (const piece of pieces) {
    const run = runs[piece.run]!;
    const segment = segments.length;
    const firstSlot = main.slot[piece.first]! - main.graces[piece.first]!;
    const onTimes: number[] = [];
    const onBeats: number[] = [];
    const zero = slots[firstSlot]!.beatTime - slots[firstSlot]!.position;
    for (let s = piece.first; s <= piece.last; s++) {
      const stroke = settled[piece.run]![s - run.first]!;
      const slot = main.slot[s]!;
      const graces = stroke >= 0 ? (roles.gracesOf.get(stroke) ?? []) : [];
      const written = main.graces[s]!;
      for (let g = 0; g < written; g++) {
        const grace = graces[g - (written - graces.length)];
        if (grace !== undefined) matches.push({ slot: slot - written + g, stroke: pads[grace]!, segment });
        else if (piece.state === 'graded') missed.push(slot - written + g);
      }
      if (stroke >= 0) {
        matches.push({ slot, stroke: pads[stroke]!, segment });
        onTimes.push(times[stroke]!);
        onBeats.push(main.beat[s]! - zero);
      } else if (piece.state === 'graded') missed.push(slot);
    }
    const fit = fitRun(onTimes, onBeats);
    const period =
      fit?.period ?? main.asked[main.line[piece.first]!] ?? thin.spacing / main.room[piece.first]!;
    const origin = fit?.origin ?? (onTimes[0] ?? 0) - period * (onBeats[0] ?? 0);
    segments.push({
      firstSlot,
      lastSlot: main.slot[piece.last]!,
      state: piece.state,
      leadSwapped: false,
      origin,
      period,
    });
  }
  const back = (indices: readonly number[]): number[] => indices.map((i) => pads[i]!);
  const alignment: Alignment = {
    reference: click !== null && clickFits(click, segments) ? 'heard-click' : unclicked,
    segments,
    matches: matches.sort((a, b) => a.stroke - b.stroke),
    missed: missed.sort((a, b) => a - b),
    extra: back(roles.extra),
    doubled: back(roles.doubled),
    outside: back(roles.outside),
    doubt: null,
  };
  return { ...alignment, doubt: doubtOf({ alignment, slots, main, levels: foundLevels }) };
};
