import { rounded } from '../result/figures.ts';
import { dayNumber } from './day-number.ts';
import type { PracticeLoad } from './practice-load.ts';

const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** A day as people say it: `9 Mar`. */
function shortDay(day: string): string {
  const date = new Date(dayNumber(day) * 86_400_000);
  return `${date.getUTCDate()}\u00a0${months[date.getUTCMonth()]}`;
}

/**
 * Minutes as people say them, short ones to the tenth.
 *
 * @example minuteWords(0.53) // '0.5 minutes'
 */
export const minuteWords = (minutes: number): string => `${rounded(minutes, minutes < 10 ? 1 : 0)} minutes`;

/** Whether minutes besides the recorded ones are in it. */
export const recordedOnlyWords = ({ logged }: Pick<PracticeLoad, 'logged'>): string =>
  logged
    ? 'Recorded takes, and minutes written down by hand.'
    : 'Recorded takes only, so the true amount is larger.';

/** Weeks with much more practice than before, as facts: no forecast. */
export function jumpSentences({ jumps }: Pick<PracticeLoad, 'jumps'>): readonly string[] {
  return jumps.map(
    ({ week, minutes, before, weeksBefore }) =>
      `Week from ${shortDay(week)}: ${rounded(minutes, 0)} minutes, after ${rounded(before, 0)} a week in the ${weeksBefore === 1 ? 'week' : `${weeksBefore} weeks`} before.`,
  );
}

/** What goes with jumps. */
export const jumpNote =
  'This is a fact, no forecast: what rises fast is best followed by easier days. Take a break of about ten minutes in every hour.';

/** What is said wherever practice is counted. Common practice of teachers; no medical advice. */
export const practiceCare =
  'Build up slowly and take a break of about ten minutes in every hour. Stop at pain, tingling or numbness and see a physician or physiotherapist if it comes back. No medical advice comes from here.';

/** Said when playing went on for fifty minutes without ten of rest. */
export const restNote = 'Fifty minutes went by without a rest of ten: lay the sticks down for ten minutes.';
