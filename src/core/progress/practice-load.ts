import { dayNumber, dayOf, weekOf } from './day-number.ts';

/** Something that was played on a day: a recorded take, or minutes that the player logged by hand. */
export interface PracticeEntry {
  readonly day: string;
  readonly minutes: number;
  readonly kind: 'recorded' | 'logged';
  /** Strokes found in a recorded take, by the hand that plays them where that is told. */
  readonly strokes?: { readonly R: number; readonly L: number; readonly untold: number };
}

export interface PracticeSum {
  /** The day, or the Monday of the week. */
  readonly from: string;
  readonly recordedMinutes: number;
  readonly loggedMinutes: number;
  readonly strokes: { readonly R: number; readonly L: number; readonly untold: number };
}

/** A week beside the mean of the weeks before it, as a fact. */
interface PracticeJump {
  readonly week: string;
  readonly minutes: number;
  readonly before: number;
  readonly weeksBefore: number;
}

export interface PracticeLoad {
  /** Days on which something was played, in order. */
  readonly days: readonly PracticeSum[];
  /** Every week from the first to the last, empty ones too. */
  readonly weeks: readonly PracticeSum[];
  readonly jumps: readonly PracticeJump[];
  /** False: recorded takes only, so that the true load is larger. */
  readonly logged: boolean;
}

/**
 * When a week is put beside those before it: half as much again as the mean of up to four weeks, and half an hour more.
 * Our judgement. It is stated as a fact and no risk is worked out from it: whether ratios of load tell anything about
 * injury is disputed (Impellizzeri et al. 2020).
 */
export const jumpRule = { weeks: 4, share: 1.5, minutes: 30 } as const;

/** Minutes and strokes by day and by week (Monday first). RangeError for minutes below zero or what is no day. */
export function practiceLoad(entries: readonly PracticeEntry[]): PracticeLoad {
  const days = sums(entries, ({ day }) => dayOf(dayNumber(day)));
  const weeks = withEmptyWeeks(sums(entries, ({ day }) => weekOf(day)));
  return { days, weeks, jumps: jumpsOf(weeks), logged: entries.some(({ kind }) => kind === 'logged') };
}

function sums(entries: readonly PracticeEntry[], keyOf: (entry: PracticeEntry) => string): PracticeSum[] {
  const found = new Map<string, PracticeSum>();
  for (const entry of entries) {
    if (!(entry.minutes >= 0)) throw new RangeError(`${entry.minutes} minutes can't be`);
    const from = keyOf(entry);
    const sum = found.get(from) ?? empty(from);
    const own = entry.strokes ?? { R: 0, L: 0, untold: 0 };
    const { strokes } = sum;
    found.set(from, {
      from,
      recordedMinutes: sum.recordedMinutes + (entry.kind === 'recorded' ? entry.minutes : 0),
      loggedMinutes: sum.loggedMinutes + (entry.kind === 'logged' ? entry.minutes : 0),
      strokes: { R: strokes.R + own.R, L: strokes.L + own.L, untold: strokes.untold + own.untold },
    });
  }
  return [...found.values()].toSorted((a, b) => (a.from < b.from ? -1 : 1));
}

const empty = (from: string): PracticeSum => ({
  from,
  recordedMinutes: 0,
  loggedMinutes: 0,
  strokes: { R: 0, L: 0, untold: 0 },
});

function withEmptyWeeks(weeks: readonly PracticeSum[]): PracticeSum[] {
  if (weeks.length === 0) return [];
  const byDay = new Map(weeks.map((week) => [week.from, week]));
  const [first, last] = [dayNumber(weeks[0]!.from), dayNumber(weeks.at(-1)!.from)];
  return Array.from({ length: (last - first) / 7 + 1 }, (_, i) => {
    const from = dayOf(first + 7 * i);
    return byDay.get(from) ?? empty(from);
  });
}

function jumpsOf(weeks: readonly PracticeSum[]): PracticeJump[] {
  const minutes = weeks.map((week) => week.recordedMinutes + week.loggedMinutes);
  return weeks.flatMap(({ from }, i) => {
    const earlier = minutes.slice(Math.max(0, i - jumpRule.weeks), i);
    if (earlier.length === 0) return [];
    const before = earlier.reduce((sum, one) => sum + one, 0) / earlier.length;
    const jumped = minutes[i]! >= jumpRule.share * before && minutes[i]! >= before + jumpRule.minutes;
    return jumped ? [{ week: from, minutes: minutes[i]!, before, weeksBefore: earlier.length }] : [];
  });
}
