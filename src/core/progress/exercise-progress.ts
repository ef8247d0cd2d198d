import type { Reason } from '../result/take-result.ts';
import { type CleanestTempo, cleanestTempo } from './cleanest-tempo.ts';
import { type ComparedFigure, comparedFigures, type TakeFigure } from './compared-figures.ts';
import { type Conditions, likeness } from './conditions.ts';
import { type DayMedian, dayMedians } from './day-medians.ts';
import { freshDays, nextTempo, type PastTake } from './next-tempo.ts';
import { type DayTrend, trendOverDays } from './trend-over-days.ts';

/** One playing of the exercise, in order of time. */
export interface ExercisePlay {
  readonly takeId: string;
  readonly day: string;
  readonly conditions: Conditions;
  /** Tempo as it was asked for, else as it was played; null where neither is known. */
  readonly bpm: number | null;
  /** Compared figures by id; those that weren't measured are left out. */
  readonly figures: Readonly<Record<string, TakeFigure>>;
  /** The take it is part of, as far as its tempo and scores go; null for takes without a score. */
  readonly take: PastTake | null;
  /** Overall score of that take. */
  readonly score: number | null;
}

interface FigureProgress {
  readonly figure: ComparedFigure;
  readonly trend: DayTrend;
  readonly days: readonly DayMedian[];
  /** Playings that were left out, since their tempo, technique or set-up is another one. */
  readonly leftOut: number;
}

/** How one exercise goes over days and weeks. */
export interface ExerciseProgress {
  readonly plays: number;
  readonly days: number;
  /** What the trends speak of: the newest playing's tempo, technique and set-up. */
  readonly like: Conditions | null;
  readonly figures: readonly FigureProgress[];
  /** Timing spread in per cent of a partial against tempo, every playing: how fast at which evenness. */
  readonly spreadByTempo: readonly {
    readonly takeId: string;
    readonly day: string;
    readonly bpm: number;
    readonly spread: TakeFigure;
  }[];
  /** Takes with the best overall scores, best first. */
  readonly cleanest: readonly {
    readonly takeId: string;
    readonly day: string;
    readonly bpm: number | null;
    readonly score: number;
  }[];
  readonly cleanestTempo: CleanestTempo | null;
  readonly next: Reason;
}

/** What is known of the player today besides the takes. */
interface Now {
  readonly discomfort: boolean;
  readonly daysAgo: (day: string) => number;
}

/** Cleanest tempos listed. Our judgement. */
const mostCleanest = 5;
const spreadShare = 'timing-spread-share';

/**
 * Progress in one exercise from its playings, oldest first. Trends take only playings like the newest: tempo within 3
 * %, the same technique, and for levels the same pad, sticks and device, all noted.
 */
export function exerciseProgress(plays: readonly ExercisePlay[], now: Now): ExerciseProgress {
  const newest = plays.at(-1);
  const likes = plays.map(({ conditions }) => likeness(conditions, newest!.conditions));
  const figures = comparedFigures.map((figure): FigureProgress => {
    const alike = (at: number) => (figure.ofLevels ? likes[at]!.levels : likes[at]!.timing);
    const measured = plays.flatMap(({ day, figures: own }, at) => {
      const found = own[figure.id];
      return found === undefined ? [] : [{ day, value: found.value, alike: alike(at) }];
    });
    const values = measured.filter((one) => one.alike);
    return {
      figure,
      trend: trendOverDays(figure, values),
      days: dayMedians(values),
      leftOut: measured.length - values.length,
    };
  });
  return {
    plays: plays.length,
    days: new Set(plays.map(({ day }) => day)).size,
    like: newest?.conditions ?? null,
    figures,
    spreadByTempo: plays.flatMap(({ takeId, day, bpm, figures: own }) => {
      const spread = own[spreadShare];
      return bpm === null || spread === undefined ? [] : [{ takeId, day, bpm, spread }];
    }),
    cleanest: plays
      .flatMap(({ takeId, day, bpm, score }) => (score === null ? [] : [{ takeId, day, bpm, score }]))
      .filter((one, i, all) => all.findIndex(({ takeId }) => takeId === one.takeId) === i)
      .toSorted((a, b) => b.score - a.score)
      .slice(0, mostCleanest),
    cleanestTempo: cleanestTempo(takesOf(plays)),
    next: nextOfPlays(plays, now),
  };
}

/**
 * The tempo to try next for an exercise from its playings, oldest first. Those of the last weeks are enough where one of
 * them has a score (`hasFreshTake`).
 */
export function nextOfPlays(plays: readonly ExercisePlay[], now: Now): Reason {
  const triedBpm = plays.findLast(({ bpm }) => bpm !== null)?.bpm ?? null;
  return nextTempo(takesOf(plays), { ...now, triedBpm });
}

/** Whether a playing with a score is so new that no older one is asked about the next tempo. */
export const hasFreshTake = (plays: readonly ExercisePlay[], { daysAgo }: Pick<Now, 'daysAgo'>): boolean =>
  takesOf(plays)
    .slice(-1)
    .some(({ day }) => daysAgo(day) <= freshDays);

const takesOf = (plays: readonly ExercisePlay[]): PastTake[] =>
  plays.flatMap(({ take }) => (take === null ? [] : [take]));
