import { shownScore } from '../scoring/score-curve.ts';
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

/**
 * What was played to an assignment, in words.
 *
 * @example playedWords([{ day: '2026-03-14', score: 81 }]) // 'played once, on 2026-03-14, best score 81'
 */
export function playedWords(
  plays: readonly { readonly day: string; readonly score: number | null }[],
  dayText: (day: string) => string = (day) => day,
): string {
  const last = plays.at(-1);
  if (last === undefined) return 'not played yet';
  const times = plays.length === 1 ? 'once, on' : `${plays.length} times, the last on`;
  const scores = plays.flatMap(({ score }) => (score === null ? [] : [score]));
  const best = scores.length === 0 ? 'without a score' : `best score ${shownScore(Math.max(...scores))}`;
  return `played ${times} ${dayText(last.day)}, ${best}`;
}
