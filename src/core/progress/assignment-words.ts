import { counted, rounded } from '../result/figures.ts';
import { shownScore } from '../scoring/score-curve.ts';
import type { AssignmentTempo } from './assignment-tempo.ts';
import { dayNumber } from './day-number.ts';

/** Whether an assignment is still to be done, seen from a day. */
type AssignmentState = 'open' | 'due-today' | 'overdue' | 'done';

/**
 * How an assignment stands on a day; one without a due day is never late.
 *
 * @example assignmentState({ dueDay: '2026-03-16', doneAt: null }, '2026-03-17') // 'overdue'
 */
export function assignmentState(
  { dueDay, doneAt }: { readonly dueDay: string | null; readonly doneAt: number | null },
  today: string,
): AssignmentState {
  if (doneAt !== null) return 'done';
  if (dueDay === null || dueDay > today) return 'open';
  return dueDay === today ? 'due-today' : 'overdue';
}

/**
 * The same in words, with the day as `dayText` writes it.
 *
 * @example assignmentWords({ dueDay: '2026-03-16', doneAt: null }, '2026-03-17') // 'was due on 2026-03-16, a day ago'
 */
export function assignmentWords(
  assignment: { readonly dueDay: string | null; readonly doneAt: number | null },
  today: string,
  dayText: (day: string) => string = (day) => day,
): string {
  const { dueDay } = assignment;
  const state = assignmentState(assignment, today);
  if (state === 'done') return 'done';
  if (dueDay === null) return 'no day set';
  if (state === 'due-today') return `due today, ${dayText(dueDay)}`;
  const days = Math.abs(dayNumber(dueDay) - dayNumber(today));
  const count = days === 1 ? 'a day' : `${days} days`;
  return state === 'open'
    ? `due on ${dayText(dueDay)}, in ${count}`
    : `was due on ${dayText(dueDay)}, ${count} ago`;
}

/** A take with an assignment's exercises, as far as words on it go. */
export interface AssignmentTake {
  readonly day: string;
  readonly score: number | null;
  readonly tempo: AssignmentTempo;
  /** BPM; null where it isn't known. */
  readonly bpm: number | null;
}

/**
 * What was played to an assignment, in words, from takes in order of time. Only those at its tempo count as played;
 * slower ones are work toward it, those at other tempos are named.
 *
 * @example playedWords([{ day: '2026-03-14', score: 81, tempo: 'asked', bpm: 96 }])
 * // 'played once, on 2026-03-14, best score 81'
 */
export function playedWords(
  takes: readonly AssignmentTake[],
  dayText: (day: string) => string = (day) => day,
): string {
  const at = (tempo: AssignmentTempo) => takes.filter((take) => take.tempo === tempo);
  const parts = [playedAtTempo(at('asked'), takes.length > 0, dayText)];
  const [slower, other, unknown] = [at('slower'), at('other'), at('unknown')];
  if (slower.length > 0) parts.push(`${counted(slower.length, 'slower take')} toward it${lastAt(slower)}`);
  if (other.length > 0)
    parts.push(
      `${counted(other.length, 'take')} at ${other.length === 1 ? 'another tempo' : 'other tempos'}${lastAt(other)}`,
    );
  if (unknown.length > 0) parts.push(`${counted(unknown.length, 'take')} without a tempo that could be told`);
  return parts.join('; ');
}

function playedAtTempo(
  takes: readonly AssignmentTake[],
  isPlayed: boolean,
  dayText: (day: string) => string,
): string {
  const last = takes.at(-1);
  if (last === undefined) return isPlayed ? 'not played at its tempo yet' : 'not played yet';
  const times = takes.length === 1 ? 'once, on' : `${takes.length} times, the last on`;
  const scores = takes.flatMap(({ score }) => (score === null ? [] : [score]));
  const best = scores.length === 0 ? 'without a score' : `best score ${shownScore(Math.max(...scores))}`;
  return `played ${times} ${dayText(last.day)}, ${best}`;
}

function lastAt(takes: readonly AssignmentTake[]): string {
  const bpm = takes.at(-1)?.bpm ?? null;
  if (bpm === null) return '';
  return `, ${takes.length === 1 ? '' : 'the last '}at ${rounded(bpm, 0)} BPM`;
}
