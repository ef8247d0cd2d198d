import type { SilentStretch } from '../click-track/silent-stretches.ts';
import type { Sheet } from '../exercise/sheet.ts';
import type { Slot } from '../exercise/slot.ts';
import type { HeardClick, Stroke } from '../onsets/stroke.ts';
import { partOfWork, type WorkTold } from '../signal/work-told.ts';
import { afterSilence } from './after-silence.ts';
import type { Alignment, ReferenceKind } from './alignment.ts';
import { clickFits, clickGoesAlong, clickPhase } from './click-phase.ts';
import { doubtOf } from './doubt.ts';
import { findPath } from './find-path.ts';
import { gradeRuns } from './grade-runs.ts';
import { laySegments } from './lay-segments.ts';
import { findLevels, levelEvidence } from './level-evidence.ts';
import { mainSlots } from './main-slots.ts';
import { otherStrokes } from './other-strokes.ts';
import { firstScatter, scatterOnPath } from './path-scatter.ts';
import { temposOnPath } from './path-tempo.ts';
import { ownStrays, strangersStrays } from './prices.ts';
import { cutRuns } from './runs.ts';
import { settleRun } from './settle-run.ts';
import { evenLevels, levelsOnPath } from './take-levels.ts';
import { thinStrokes } from './thin-strokes.ts';

/** A take to be laid on its exercise. */
export interface AlignQuestion {
  readonly slots: readonly Slot[];
  readonly sheet: Sheet;
  /** All sounds found, in order of time; only those of class `pad` are laid on slots. */
  readonly strokes: readonly Stroke[];
  readonly click: HeardClick | null;
  /** Where the click left the player alone, s of the recording. */
  readonly silences?: readonly SilentStretch[];
  /** Others are heard playing, so that many strokes belong to no slot. */
  readonly inCompany?: boolean;
}

/**
 * Paths followed at once: few while levels and tempo are looked for, then more, and more with more bars. Measured: half
 * to twice of each aligns 120 simulated takes the same.
 */
const breadth = { first: 24, second: 24, mostBars: 64 };
/** About how much of the work the first search is. */
const firstShare = 0.4;

/**
 * Lays the strokes of a take on the slots of its exercise and says which were played, missed, extra, doubled
 * or outside, in runs that begin anew at every stop, slip, jump or restart. Two searches: the first, on a guess,
 * finds the take's levels, tempos and scatter; the second decides. Never throws; an empty or foreign take comes
 * back with a doubt. `tell` hears how far it has come.
 *
 * @example alignTake({ slots, sheet, strokes, click: null }).matches.length // → strokes that found a slot
 */
export const alignTake = (
  { slots, sheet, strokes, click: heardClick, silences = [], inCompany = false }: AlignQuestion,
  tell?: WorkTold,
): Alignment => {
  const click = heardClick !== null && heardClick.times.length > 1 ? heardClick : null;
  const main = mainSlots(slots, sheet);
  const pads = strokes.flatMap((stroke, i) => (stroke.sound === 'pad' ? [i] : []));
  const back = (indices: readonly number[]): number[] => indices.map((i) => pads[i]!);
  const unclicked: ReferenceKind = main.asked.includes(null) ? 'fitted-tempo' : 'asked-tempo';
  const clicked: ReferenceKind = click?.played === undefined ? 'heard-click' : 'played-click';
  const nothing: Alignment = {
    reference: unclicked,
    segments: [],
    matches: [],
    missed: [],
    extra: [],
    doubled: [],
    outside: pads,
    doubt: { code: 'nothing-fits', facts: { slots: main.length, strokes: pads.length } },
  };
  if (main.length === 0 || pads.length < 2) return nothing;

  const times = Float64Array.from(pads, (i) => strokes[i]!.time);
  const levels = Float64Array.from(pads, (i) => strokes[i]!.levelDb);
  const thin = thinStrokes(times, levels, main);
  const accentShare = main.accent.reduce((sum, accent) => sum + accent, 0) / main.length;
  const guessed = findLevels(evenLevels(times, levels, thin), accentShare);
  const phasePrice = click === null ? undefined : clickPhase(click, main, times);
  const clickIsBack = silences.length === 0 ? undefined : afterSilence(silences, times);
  const stray = inCompany ? strangersStrays : ownStrays;
  const first = findPath({
    times,
    thin,
    main,
    phasePrice,
    clickIsBack,
    levels: levelEvidence(levels, guessed),
    scatter: firstScatter,
    stray,
    found: main.asked.map(() => null),
    breadth: breadth.first,
    tell: partOfWork(tell, 0, firstShare),
  });
  const heard = levelsOnPath(first, main, levels, accentShare) ?? guessed;
  const evidence = levelEvidence(levels, heard);
  const scatter = scatterOnPath(first, main, times);
  const path = findPath({
    times,
    thin,
    main,
    phasePrice,
    clickIsBack,
    levels: evidence,
    scatter,
    stray,
    found: temposOnPath(first, main, times),
    breadth: breadth.second + Math.min(breadth.mostBars, main.bars.length),
    tell: partOfWork(tell, firstShare, 1),
  });
  if (path.length === 0) return nothing;

  const runs = cutRuns(path, main);
  const settled = runs.map((run, r) => {
    const from = (runs[r - 1]?.steps.at(-1)?.stroke ?? -1) + 1;
    const to = runs[r + 1]?.steps[0]?.stroke ?? times.length;
    return settleRun({ run, main, times, levels: evidence, scatter, stray, from, to });
  });
  const others = otherStrokes({ runs, settled, main, times });
  const laid = laySegments({ pieces: gradeRuns(runs, main), runs, settled, others, main, slots, times });
  const toClick =
    click !== null &&
    clickFits(click, laid.segments) &&
    clickGoesAlong(
      click,
      laid.matches.map(({ stroke }) => times[stroke]!),
    );
  const alignment: Alignment = {
    reference: toClick ? clicked : unclicked,
    segments: laid.segments,
    matches: laid.matches.map((match) => ({ ...match, stroke: pads[match.stroke]! })),
    missed: laid.missed,
    extra: back(others.extra),
    doubled: back(others.doubled),
    outside: back(others.outside),
    doubt: null,
  };
  return { ...alignment, doubt: doubtOf({ alignment, slots, main, levels: heard }) };
};
