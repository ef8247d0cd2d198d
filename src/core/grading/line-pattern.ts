import type { TakeResult } from '../result/take-result.ts';
import { outliers } from '../stats/outliers.ts';
import { smoothMedian } from '../stats/smooth-median.ts';

/** What a player does on one written stroke of a line, over its repeats. */
export interface Habit {
  readonly mean: number;
  /** Standard deviation over the repeats; null for fewer than two. */
  readonly scatter: number | null;
  /** Graded strokes behind it, by index into the take's strokes; slips left out. */
  readonly strokes: readonly number[];
}

/** One written stroke of a line with what was made of it; null where no repeat has it. */
export interface PatternStroke {
  readonly beat: number;
  readonly partial: number;
  readonly divisions: number;
  readonly accent: boolean;
  /** Against the even place in the local tempo, % of a partial, late positive. */
  readonly placement: Habit | null;
  /** Against the line's median tap, dB; null too where the line has no taps. */
  readonly level: Habit | null;
}

/** Scatter of single strokes round their habits, with its degrees of freedom. */
export interface PooledScatter {
  readonly sd: number;
  readonly degrees: number;
}

/** A line as it was played: its pattern of places and levels. */
export interface LinePattern {
  readonly notation: string;
  readonly strokes: readonly PatternStroke[];
  /** % of a partial. */
  readonly placementScatter: PooledScatter;
  /** dB. */
  readonly accentScatter: PooledScatter;
  readonly tapScatter: PooledScatter;
  /** Standard error of the median tap, dB. */
  readonly medianTapSe: number;
}

/** Taps below which there is no median tap to compare levels with (our judgement, as for the measures of levels). */
const fewestTaps = 6;

interface Heard {
  readonly stroke: number;
  readonly share: number | null;
  readonly levelDb: number;
}

/** Habits of groups of values, slips left out by Rosner's test, and what scatters round them. */
function habitsOf(groups: readonly (readonly { stroke: number; value: number }[])[]): {
  readonly habits: readonly (Habit | null)[];
  readonly scatter: PooledScatter;
} {
  const all = groups.flatMap((group, g) => group.map(({ value }) => ({ value, g })));
  const marks = outliers(
    all.map(({ value }) => value),
    all.map(({ g }) => g),
  );
  let at = 0;
  let squares = 0;
  let degrees = 0;
  const habits = groups.map((group): Habit | null => {
    const kept = group.filter(() => marks[at++] === 0);
    if (kept.length === 0) return null;
    const mean = kept.reduce((sum, { value }) => sum + value, 0) / kept.length;
    const around = kept.reduce((sum, { value }) => sum + (value - mean) ** 2, 0);
    squares += around;
    degrees += kept.length - 1;
    const scatter = kept.length < 2 ? null : Math.sqrt(around / (kept.length - 1));
    return { mean, scatter, strokes: kept.map(({ stroke }) => stroke) };
  });
  return { habits, scatter: { sd: degrees > 0 ? Math.sqrt(squares / degrees) : 0, degrees } };
}

/** The pattern of a line, by its place in the sheet, in a graded take; without strokes where it wasn't played. */
export function linePattern(result: TakeResult, line: number): LinePattern {
  const { slots, strokes, tempo } = result;
  const bpmAt = new Map(tempo.time.map((time, i) => [time, tempo.bpm[i]!]));
  const written = new Map<string, { slot: number; heard: Heard[] }>();
  slots.line.forEach((own, slot) => {
    if (own !== line || slots.grace[slot]) return;
    const key = `${slots.beat[slot]} ${slots.partial[slot]}`;
    const place = written.get(key) ?? { slot, heard: [] };
    written.set(key, place);
    const stroke = slots.stroke[slot] ?? null;
    if (stroke === null || slots.state[slot] !== 'played') return;
    const deviation = strokes.deviationMs[stroke] ?? null;
    const bpm = bpmAt.get(strokes.time[stroke]!);
    const share =
      deviation === null || bpm === undefined ? null : (deviation * slots.divisions[slot]! * bpm) / 600;
    place.heard.push({ stroke, share, levelDb: strokes.levelDb[stroke]! });
  });
  const places = [...written.values()];
  const accent = ({ slot }: { slot: number }) => slots.accent[slot]!;
  const taps = places.filter((place) => !accent(place)).flatMap(({ heard }) => heard.map((h) => h.levelDb));
  const middle = taps.length < fewestTaps ? null : smoothMedian(taps);
  const timing = habitsOf(
    places.map(({ heard }) =>
      heard.flatMap(({ stroke, share }) => (share === null ? [] : [{ stroke, value: share }])),
    ),
  );
  const levelsOf = (loud: boolean) =>
    habitsOf(
      places.map((place) =>
        middle === null || accent(place) !== loud
          ? []
          : place.heard.map(({ stroke, levelDb }) => ({ stroke, value: levelDb - middle.value })),
      ),
    );
  const [loud, soft] = [levelsOf(true), levelsOf(false)];
  return {
    notation: result.sheet.lines[line]!.notation,
    strokes: places.map((place, i) => ({
      beat: slots.beat[place.slot]!,
      partial: slots.partial[place.slot]!,
      divisions: slots.divisions[place.slot]!,
      accent: accent(place),
      placement: timing.habits[i]!,
      level: (accent(place) ? loud : soft).habits[i]!,
    })),
    placementScatter: timing.scatter,
    accentScatter: loud.scatter,
    tapScatter: soft.scatter,
    medianTapSe: middle === null ? 0 : Math.sqrt(middle.pulls.reduce((sum, pull) => sum + pull * pull, 0)),
  };
}
