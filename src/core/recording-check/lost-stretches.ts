import type { Performance } from '../measures/performance.ts';
import type { PlayedStroke } from '../measures/played-stroke.ts';
import { madToSd } from '../stats/mad.ts';
import { median } from '../stats/median.ts';
import type { LostStretch } from './lost-stretch.ts';
import { phaseSteps } from './phase-steps.ts';
import { withoutBetween } from './without-between.ts';

/** Longer steps from stroke to stroke than this, in beats, are rests, which players cut short themselves. */
const longestBeats = 0.9;
/**
 * A step is so large, s, and so many times the usual scatter of intervals: 20 ms lost six times a minute leave every
 * figure of a rendered take inside its interval, 40 ms don't (`reports/recording-check.md`).
 */
const step = { seconds: 0.02, scatter: 4 };
/** A device loses blocks of one length: so near the middle one all but a few lie, in scatter and as a share of it. */
const alike = { scatter: 3, share: 0.25, of: 0.6 };
/** One may be the player's, who stumbles once. */
const fewest = 2;
const fewestIntervals = 24;
/** So many intervals on each side tell what the tempo is there, or a few less at an end. Our judgement. */
const neighbours = { most: 9, fewest: 5 };

interface Interval {
  /** Its end, s. */
  readonly time: number;
  readonly index: number;
  /** How much longer it is than those on the same place of the beat, s. */
  readonly over: number;
}

/**
 * Stretches lost without a trace in the sound, by what they do to time: the interval round one is shorter by what was
 * lost, the ones beside it don't make up for it, and all are short by about as much. Players hurry and hold back by
 * amounts that differ. Where the strokes found no way through the sheet for it, the sounds themselves are asked.
 */
export function lostStretches(
  { strokes }: Pick<Performance, 'strokes'>,
  sounds: readonly number[] = [],
): readonly LostStretch[] {
  const written = earlyAlike(intervalsOf(strokes));
  if (written.length > 0) return written;
  const steps = phaseSteps(sounds);
  return steps.length > 0 ? steps : phaseSteps(withoutBetween(sounds));
}

/**
 * Intervals against those just before or just after, whichever they are nearer to: where the tempo changes, an interval
 * goes with one side, where sound is lost, with neither.
 */
function againstNeighbours(intervals: readonly Interval[]): readonly Interval[] {
  const middleOf = (from: number, to: number) => {
    const some = intervals.slice(Math.max(0, from), to).map(({ over }) => over);
    return some.length < neighbours.fewest ? null : median(some);
  };
  return intervals.map((one, i) => {
    const sides = [middleOf(i - neighbours.most, i), middleOf(i + 1, i + 1 + neighbours.most)];
    const steps = sides.flatMap((side) => (side === null ? [] : [one.over - side]));
    if (steps.length === 0) return one;
    return { ...one, over: steps.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a)) };
  });
}

const scatterOf = (intervals: readonly Interval[]): number =>
  madToSd * median(intervals.map(({ over }) => Math.abs(over)));

/** What comes early and stays so, where it does by about the same each time. */
function earlyAlike(all: readonly Interval[]): readonly LostStretch[] {
  if (all.length < fewestIntervals) return [];
  const intervals = againstNeighbours(all);
  // Few neighbours scatter themselves, a change of tempo scatters all.
  const scatter = Math.min(scatterOf(all), scatterOf(intervals));
  const bound = Math.max(step.seconds, step.scatter * scatter);
  const early: LostStretch[] = [];
  let late = 0;
  for (const [i, { time, index, over }] of intervals.entries()) {
    const [before, after] = [intervals[i - 1], intervals[i + 1]];
    const beside =
      (before?.index === index - 1 ? before.over : 0) + (after?.index === index + 1 ? after.over : 0);
    const stays = Math.abs(over + beside) < Math.abs(over) ? over + beside : over;
    if (stays >= bound) late++;
    else if (stays <= -bound) early.push({ time, seconds: -stays });
  }
  if (early.length < fewest || late > early.length / 4) return [];
  const middle = median(early.map(({ seconds }) => seconds));
  const near = Math.max(alike.scatter * scatter, alike.share * middle);
  const same = early.filter(({ seconds }) => Math.abs(seconds - middle) <= near);
  return same.length >= fewest && same.length >= alike.of * early.length ? same : [];
}

/** Intervals between strokes that follow each other, against the median of their place in the beat. */
function intervalsOf(strokes: readonly PlayedStroke[]): readonly Interval[] {
  const found: { stroke: PlayedStroke; index: number; seconds: number; beats: number; place: string }[] = [];
  for (let i = 1; i < strokes.length; i++) {
    const [before, stroke] = [strokes[i - 1]!, strokes[i]!];
    // What comes too early for a run is taken for a new one, on the slots that follow.
    const beats = stroke.slot.beatTime - before.slot.beatTime;
    if (!(beats > 0 && beats <= longestBeats)) continue;
    const { beatTime, accent, line } = stroke.slot;
    // Each line has its own tempo; the step from one to the next has neither.
    if (before.slot.line !== line) continue;
    const place = `${line} ${(beatTime % 1).toFixed(3)} ${beats.toFixed(3)} ${accent}`;
    found.push({ stroke, index: i, seconds: stroke.time - before.time, beats, place });
  }
  if (found.length === 0) return [];
  const lines = [...new Set(found.map(({ stroke }) => stroke.slot.line))];
  const periods = new Map(
    lines.map((line) => {
      const own = found.filter(({ stroke }) => stroke.slot.line === line);
      return [line, median(own.map(({ seconds, beats }) => seconds / beats))];
    }),
  );
  const overOf = ({ stroke, seconds, beats }: (typeof found)[number]) =>
    seconds - periods.get(stroke.slot.line)! * beats;
  const places = new Map<string, number[]>();
  for (const one of found) {
    const others = places.get(one.place);
    if (others === undefined) places.set(one.place, [overOf(one)]);
    else others.push(overOf(one));
  }
  const usual = new Map([...places].map(([place, overs]) => [place, median(overs)]));
  return found.map((one) => ({
    time: one.stroke.time,
    index: one.index,
    over: overOf(one) - usual.get(one.place)!,
  }));
}
