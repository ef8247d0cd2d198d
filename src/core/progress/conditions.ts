/** Under what a take was played, as far as it was noted; null where nothing was noted. Untrusted text. */
export interface Conditions {
  /** What was played: the sheet's lines, or one exercise. */
  readonly exercise: string;
  readonly bpm: number | null;
  readonly technique: string | null;
  readonly pad: string | null;
  readonly sticks: string | null;
  readonly device: string | null;
}

export type ConditionName = keyof Conditions;

/** How far two takes can be held against each other. */
export interface Likeness {
  /** Conditions known on both sides that differ, in the order of the list. */
  readonly differ: readonly ConditionName[];
  /** Conditions that nobody noted on one side or on both. */
  readonly unknown: readonly ConditionName[];
  /** Exercise, tempo and technique are alike as far as they are known: timing may be compared. */
  readonly timing: boolean;
  /** Pad, sticks and device are alike as well, and noted: levels may be compared. */
  readonly levels: boolean;
}

/** Tempos further apart than this share aren't like tempos. Our judgement. */
export const likeTempoShare = 0.03;

const forTiming: readonly ConditionName[] = ['exercise', 'bpm', 'technique'];
const forLevels: readonly ConditionName[] = ['pad', 'sticks', 'device'];

/** Whether two tempos, BPM, are like ones: within 3 % of the slower. */
export const likeTempo = (a: number, b: number): boolean =>
  Math.abs(a - b) <= likeTempoShare * Math.min(a, b) + 1e-9;

const same = (name: ConditionName, a: string | number, b: string | number): boolean =>
  name === 'bpm'
    ? likeTempo(Number(a), Number(b))
    : String(a).trim().toLowerCase() === String(b).trim().toLowerCase();

/**
 * Which conditions two takes share. Levels compare only where pad, sticks and device were noted and are the same.
 *
 * @example likeness({ ...tuesday, bpm: 100 }, { ...friday, bpm: 102 }).timing // true: within 3 %
 */
export function likeness(a: Conditions, b: Conditions): Likeness {
  const names = [...forTiming, ...forLevels];
  const unknown = names.filter((name) => a[name] === null || b[name] === null);
  const differ = names.filter((name) => !unknown.includes(name) && !same(name, a[name]!, b[name]!));
  const timing = forTiming.every((name) => !differ.includes(name)) && !unknown.includes('bpm');
  const known = forLevels.every((name) => !differ.includes(name) && !unknown.includes(name));
  return { differ, unknown, timing, levels: timing && known };
}
